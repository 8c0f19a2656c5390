import { type CardReading, cardOffsetText, type ScaleAsked } from '@coreward/bench';

/** Words of the steer page. What is said of a step, and what is to be expected, comes from bench. */
export const steerTexts = {
  title: (name: string): string => `Steer “${name}”`,
  intro:
    'Two cards, the laser from one side, reference light from the other. Where both spots lie over each other on both cards, the laser’s light runs along the fibre’s own axis.',
  before: 'Before the reverse light is connected',
  steps: 'Two steps to read and tick',
  readFirst: 'Read and tick both steps above first. Practice needs no light and can begin at once.',
  forecast: 'What the walk will begin with',
  cards: 'Where the cards stand',
  beforeLens: 'near card, from the lens',
  behindFarMirror: 'far card, behind M1 towards the laser',
  readingError: 'an offset is read to ±',
  cardsHint: 'As far behind M1 as there is room: the distance of the cards decides.',
  begin: 'Begin at the bench',
  practise: 'Practise without hardware',
  seed: 'seed of the practice bench',
  seedRefused: 'A seed is a whole number from 0 to 4294967295.',
  toWalk: 'Walk to the peak',
  again: 'Start anew',
  undo: 'Undo the last answer',
  step: 'Now',
  practising: (seed: number): string =>
    `Practice bench, seed ${seed}: a simulated bench, its spots and its hand.`,
  hand: 'Let the simulated hand do it',
  turnIt: 'Turn it, and watch the cards',
  whichWay: 'Which way did the laser’s spot go?',
  done: 'Done',
  doIt: 'Turn it',
  went: { left: 'left', right: 'right', up: 'up', down: 'down' },
  light: 'There is light',
  dark: 'Nothing',
  nothingOnLine: 'Nothing on this line',
  nearCard: 'Card before the lens',
  farCard: 'Card behind M1',
  right: 'right (mm)',
  upwards: 'up (mm)',
  offsetLabel: (card: string, way: string): string => `${card}: ${way}`,
  enter: 'Enter these offsets',
  typed: 'typed',
  byCamera: 'by camera',
  how: 'how the offsets are read',
  offsetIs: ({ offset, uncertainty }: CardReading): string => cardOffsetText(offset, uncertainty),
  camera: {
    about:
      'One camera looks at one card, and neither moves while it is read. Lay a ruler or a grid of known size on the card. Shorten the exposure until the middle of a spot is not white.',
    which: 'which card the camera looks at',
    isRead: '(read)',
    looks: 'the camera looks',
    downstream: 'downstream, the way the laser goes',
    upstream: 'upstream, against the laser, as from behind a translucent card',
    scale: {
      title: 'Scale of the picture',
      by: { ruler: 'a ruler', rectangle: 'four corners', typed: 'a figure' } satisfies Record<
        ScaleAsked['by'],
        string
      >,
      length: {
        ruler: 'the ruler reads between both marks',
        rectangle: 'sides of the rectangle, the one across first',
        typed: 'pixels a length, or the length of a pixel',
      } satisfies Record<ScaleAsked['by'], string>,
      example: {
        ruler: 'such as 40 mm',
        rectangle: 'such as 40 mm x 30 mm',
        typed: 'such as 12.5 px/mm',
      } satisfies Record<ScaleAsked['by'], string>,
      hint: {
        ruler:
          'Drag both marks onto lines of the ruler, far apart. How far aslant the camera looks is not told so: up to 20° are counted.',
        rectangle:
          'Drag the four marks onto the corners of a rectangle on the card, of a grid for example. That takes out how far aslant the camera looks.',
        typed: 'How far aslant the camera looks is not told so: up to 20° are counted.',
      } satisfies Record<ScaleAsked['by'], string>,
    },
    keepStill: {
      reverse: 'Block the laser. Only the reverse light lies on the card.',
      forward: 'Block the reverse light. Only the laser’s spot lies on the card.',
    },
    keep: { reverse: 'Keep the reverse spot', forward: 'Keep the laser’s spot' },
    watch: {
      forward:
        'Block the reverse light and let the laser through. Turn as it is said here, or take the offset as it is.',
      reverse:
        'Block the laser and let the reverse light through. Turn as it is said here, or take the offset as it is.',
    },
    moveFibre:
      'The reverse light may run in several modes: move the fibre gently while the spot is kept, so that its wander is averaged.',
    keptSpot: (count: number): string => `Kept, the mean of ${count} pictures.`,
    wandered: (length: string): string => `It wandered by ${length} (rms).`,
    takeOffset: 'Take this offset',
    taking: (count: number, of: number): string => `Picture ${count} of ${of} …`,
    stop: 'Stop',
    seen: 'One spot is seen.',
    scaleMissing: 'Tell the scale above: without it there is no length.',
    liveLabel: 'the offset now, and what to turn',
    read: (offset: string): string => `Read: from the reverse spot the laser’s lies ${offset}.`,
    byFile: 'Or two pictures of this card, one beam blocked at a time, card and camera unmoved:',
    beams: { forward: 'laser alone', reverse: 'reverse light alone' },
    beamLabel: {
      forward: 'a picture of the laser’s spot alone',
      reverse: 'a picture of the reverse spot alone',
    },
    notAlike: 'The two pictures differ in size. Take both with the same camera, and crop neither.',
    readPictures: 'Read both pictures',
    enter: 'Enter both offsets',
  },
  legendBefore: 'Dashed: where the laser’s spot lay before.',
  legend: 'Ring: reverse light. Disc: the laser. Seen looking downstream.',
  gridIs: (length: string): string => `one square is ${length}`,
  spotsOf: (card: string, x: string, y: string): string =>
    `${card}: the laser’s spot lies ${x} to the right of the reverse spot and ${y} above it`,
  serving: 'Turning by eye instead',
  search: 'The search, line by line',
  searchAt: (line: number, of: number): string => `line ${line} of ${of}`,
  searchLabel: 'Path of the search',
  soFar: 'What was done so far',
  notKept: 'Not kept: the station does not answer. Try again.',
  waiting: 'Asking the station …',
  noBook: 'The station does not answer, so nothing would be kept. Try again when it does.',
  cannot: 'This launch cannot be steered',
  goesOnAsBegun:
    'The lengths or parts of this launch were changed since this steer was begun. It goes on with those it was begun with, as its answers were given for them. If the bench itself was changed, start anew.',
  changed: 'The launch has changed since this steer was begun, and its answers no longer fit.',
} as const;
