import type { CameraLack } from '../camera/open-camera.ts';
import type { Hold, HoldName } from '../camera/settings-held.ts';

/** Words around a camera. What a picture says is told by bench. */
export const cameraTexts = {
  open: 'Open the camera',
  opening: 'Waiting for the camera. The browser may ask whether this page may use it.',
  close: 'Close the camera',
  which: 'camera',
  unnamed: (rank: number): string => `camera ${rank}`,
  preview: 'what the camera sees',
  still: (name: string): string => `the picture ${name}`,
  marks: 'Marks on the picture',
  mark: (rank: number, x: number, y: number): string =>
    `Mark ${rank} at ${x}, ${y}. Drag it, or move it by arrow keys; with Shift in strides.`,
  stays: 'Pictures stay in this browser; nothing of them is sent or kept.',
  lacks: {
    'not secure': {
      what: 'The browser gives no camera to a page that came over plain HTTP from another machine.',
      mend: 'Open this page by the station’s https address, or on the station’s own computer; or choose a picture.',
    },
    none: {
      what: 'There is no camera on this device.',
      mend: 'Connect one and press again, or choose a picture.',
    },
    refused: {
      what: 'This page was not allowed to use the camera.',
      mend: 'Allow the camera in the browser’s settings for this address and press again, or choose a picture.',
    },
    busy: {
      what: 'The camera does not answer: another program may hold it.',
      mend: 'Close what else uses the camera and press again, or choose a picture.',
    },
    lost: {
      what: 'The camera is gone: it was pulled out, or switched off.',
      mend: 'Connect it and press again.',
    },
  } satisfies Record<CameraLack, { readonly what: string; readonly mend: string }>,
  holds: 'What the camera holds still',
  holdNames: {
    exposure: 'exposure',
    'white balance': 'white balance',
    focus: 'focus',
  } satisfies Record<HoldName, string>,
  hold: {
    held: (names: string): string => names,
    refused: (names: string): string => `not ${names}, which the camera did not hold`,
    'cannot be asked': (names: string): string => `not ${names}, which cannot be held from here`,
  } satisfies Record<Hold['outcome'], (names: string) => string>,
  drifts:
    'What is not held may change with the picture, and with it what a reading is worth. Hold it in the camera’s own program, or keep the picture evenly lit.',
  exposure: 'exposure time',
  take: 'Take the picture',
  taking: 'Taking …',
  takeBeam: {
    forward: 'Take the forward beam alone',
    reverse: 'Take the reverse beam alone',
  },
  pictureName: (rank: number): string => `camera-${rank}.png`,
  fromFile: 'or a picture',
  fileLabel: 'a picture instead of the camera',
  meter: {
    intro:
      'Point the camera at the spot, on a card or behind a lens, and leave it there. Open it on the device that looks: its readings go to every page.',
    dark: 'Take the dark frame',
    darkHint: 'Block the beam first: what else lights the region is then taken off each reading.',
    darkTaking: 'Taking the dark frame. Leave the beam blocked …',
    darkDone: 'The dark frame is taken off.',
    darkForget: 'Forget the dark frame',
    wasLit:
      'The region was hardly darker than before. If the beam was not blocked, block it and take it again.',
    brightest: 'Region around the brightest spot',
    isDark: 'No light in the region: the camera is covered, the beam is blocked, or the spot lies elsewhere.',
    isDarkBefore: 'No light is seen yet: the camera is covered, or the picture is too dark.',
    now: 'relative power now',
    noise: (share: string): string => `scatters by ${share}`,
    rate: (words: string): string => `${words}`,
    notSent: (why: string): string => `Readings are held back: ${why}`,
  },
  levelExample: 'such as 25 %',
  levels: {
    title: 'Does it keep to the light? Two known levels tell',
    text: 'Show it levels you know: all of the light, then with a neutral filter of 25 %, or with two polarisers. Hold exposure and white balance still.',
    level: 'level of the light now',
    read: 'Read this level',
    forget: 'Start afresh',
    row: (level: string, value: string): string => `${level} reads ${value}`,
    gauge: 'The same with more levels: the gauge of its linearity',
  },
  whole: 'Whole picture',
  region: 'Region',
  regionLabel: (text: string): string => `Region of the picture: ${text}`,
  regionHint:
    'Drag across the picture to choose the region. With keys: arrows move it, with Shift they make it wider, narrower, higher and lower.',
  regionText: (x: number, y: number, width: number, height: number): string =>
    `${width} by ${height} pixels from ${x}, ${y}`,
  fault: 'The camera’s pictures could not be worked on, a fault of ours:',
} as const;
