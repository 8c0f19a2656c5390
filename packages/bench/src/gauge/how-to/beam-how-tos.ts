import type { HowTo } from './how-to.ts';

const stray =
  'A shiny edge throws the beam aside. Find out with little power where it goes, and stop it there with something black.';
const lessPower =
  'The result does not depend on the power: turn it down, or put a filter in, before anyone bends over the beam.';
const wall =
  'The beam crosses the room at its full power. Keep it below or above eye height, and nobody in its way.';
const reference =
  'Unplug the laser at the near end first: its light must not reach the reference source, unless you know what that tolerates.';

/** Beam, mount, mirror and lens. */
export const beamHowTos: readonly HowTo[] = [
  {
    gauge: 'knife-edge',
    steps: [
      'Fix a razor blade on a stage with a micrometer, its edge across the direction you move it in. Put a detector behind it that catches the whole beam.',
      'Move the blade until the reading no longer changes, and note position and reading.',
      'Go on in steps of about a fifth of the beam until the reading no longer changes on the other side. Always turn the same way.',
      'Fifteen readings do well, four of them in the middle. For M², do it at several distances and note them in a column `distance`.',
    ],
    cautions: [stray, lessPower],
    example:
      'position (mm),power (mW)\n5.0,0.003\n5.2,0.012\n5.4,0.065\n5.6,0.29\n5.8,0.86\n6.0,1.71\n6.2,2.55\n6.4,3.12\n6.6,3.36\n6.8,3.41\n7.0,3.42\n',
  },
  {
    gauge: 'spot-picture',
    steps: [
      'Put a camera without its lens into the beam, or photograph the spot on matt white paper, square to it.',
      'Lock exposure, gain and focus. Shorten the exposure until no pixel is full; leave as much dark around the spot as it is wide.',
      'Give the width of a pixel: the camera’s pitch without a lens, or a ruler beside the spot (`ruler length`, `ruler pixels`).',
      'Take several pictures and compare the results.',
    ],
    cautions: [
      'Never look for the spot through the camera’s own finder. A camera without a lens takes a microwatt, not a milliwatt: put filters in.',
      'White paper scatters the beam into the room: keep some distance at more than a few milliwatts.',
    ],
    example: null,
  },
  {
    gauge: 'two-distances',
    steps: [
      'Measure the spot on a card at one distance from the laser, and at one several times as far.',
      'Judge its edge where it has about an eighth of the brightness of the middle (1/e²), not where it vanishes.',
      'Note where you measured from; give the wavelength, and it is checked that both places are far from the waist.',
    ],
    cautions: [wall, lessPower],
    example: '# wavelength: 520 nm\ndistance (m),diameter (mm)\n1.0,4.5\n6.0,22\n',
  },
  {
    gauge: 'caustic',
    steps: [
      'Focus the beam with a lens of some 200 mm, so that the whole waist fits on the bench.',
      'Measure the second-moment diameter at five places within one Rayleigh length of the waist, and at five beyond two.',
      'Use one method throughout: a camera, as for the spot picture, or a knife edge.',
      'Give the wavelength. For an elliptic beam head two columns, `diameter x` and `diameter y`.',
    ],
    cautions: [
      'At the waist of a focused beam, paper smoulders and cameras die first: turn the power down.',
      stray,
    ],
    example:
      '# wavelength: 520 nm\nz (mm),diameter (µm)\n150,433\n165,321\n180,215\n190,151\n195,127\n200,113\n205,128\n210,150\n220,217\n235,320\n250,431\n',
  },
  {
    gauge: 'ruler',
    steps: [
      'Lay the ruler on anew for every reading, and read both ends.',
      'Four readings or more show what they are worth.',
    ],
    cautions: ['Switch the laser off while a steel ruler is near the beam: it is a mirror.'],
    example: '# division: 1 mm\nlength (mm)\n160\n160.5\n159.5\n160\n',
  },
  {
    gauge: 'screw-turns',
    steps: [
      'Send the beam over the mirror to a wall some metres away, with a ruler on it.',
      'Turn one screw by half turns, always the same way, and note the spot each time.',
      'Turn it back through the same places: the two rows show the slack.',
    ],
    cautions: [wall],
    example:
      '# distance: 3.2 m\nturns,spot (mm)\n-0.5,72\n0,100\n0.5,126\n1,151\n1.5,177\n1.25,165\n0.75,140\n0.25,114\n-0.25,88\n',
  },
  {
    gauge: 'card-offset',
    steps: [
      'Fix a card with a printed ruler or grid where both beams meet it, and a camera in front of it or behind it, out of the beams. Lock exposure, gain and focus.',
      'Block the reverse beam and photograph the forward spot; block the forward beam and photograph the reverse spot. Touch neither card nor camera between the two.',
      'No pixel of a spot may be full: shorten the exposure, or weaken the beam. Keep lamps and reflections out of the picture.',
      'Give the scale (`scale`), or better the four corners of a known rectangle on the card (`corners`, `rectangle`): they take out how far aslant the camera looks.',
      'Where more than one mode of the fibre carries the reverse light, move the fibre between several pictures of it and compare.',
    ],
    cautions: [
      'Reverse light leaves towards the laser, and the far end is open: unplug or block the laser before reverse light goes in, and look at the screen, never into the beam or through the camera’s own finder.',
      lessPower,
    ],
    example: null,
  },
  {
    gauge: 'before-and-after',
    steps: [
      'Read the power before the part and behind it, with the same detector, catching the whole beam both times.',
      'Do it four times; take the dark reading off.',
    ],
    cautions: [
      'What a mirror does not reflect goes through it or into it: look behind a mirror with a card, not with an eye.',
    ],
    example: 'before (mV),behind (mV)\n211,203\n210,203\n212,204\n211,202\n',
  },
  {
    gauge: 'far-wall-spot',
    steps: [
      'Send reference light into the far end of the fibre, so that it leaves the collimator towards the room.',
      'Set the focus so that the spot at the far wall is smallest, then measure the spot there and at one distance between.',
      'Give the wavelength and the fibre’s mode field diameter for that light.',
    ],
    cautions: [reference, wall],
    example:
      '# wavelength: 650 nm\n# mode field diameter: 5.1 µm\ndistance (m),diameter (mm)\n2,1.8\n8,4.2\n',
  },
  {
    gauge: 'reverse-radius',
    steps: [
      'Send reference light into the far end, and measure its width where it leaves the collimator: by knife edge, or on paper.',
      'Give the wavelength and the fibre’s mode field diameter for that light.',
    ],
    cautions: [reference, stray],
    example:
      '# wavelength: 650 nm\n# mode field diameter: 5.1 µm ± 3 %\ndiameter (mm)\n1.01\n1.03\n0.99\n1.00\n',
  },
  {
    gauge: 'imaging',
    steps: [
      'Stand a bright object, the lens and a card in a row. Move the card until the image is sharp.',
      'Note both distances from the middle of the lens. Repeat with other distances.',
    ],
    cautions: [
      'Use a lamp, not the sun and not a laser: a lens in the sun sets fire to what lies in its focus.',
    ],
    example: 'object distance (mm),image distance (mm)\n160,127\n200,108\n250,98\n320,90\n',
  },
  {
    gauge: 'two-colour-focus',
    steps: [
      'Set the focus so that light of the first colour leaves collimated: smallest spot at a far wall. Note the thread’s reading.',
      'Do the same with the second colour. Five settings of each show how well it can be set.',
    ],
    cautions: [reference, wall],
    example:
      '# wavelength 1: 635 nm\n# wavelength 2: 515 nm\n# glass: N-BK7\nfirst (mm),second (mm)\n3.012,2.894\n3.004,2.889\n3.009,2.902\n2.998,2.896\n3.006,2.885\n',
  },
  {
    gauge: 'thread-pitch',
    steps: ['Count ten turns, and measure how far the part stands out before and after, with a calliper.'],
    cautions: ['Stop before the lens meets the ferrule: look at the gap from the side.'],
    example: 'turns,advance (mm)\n0,3.1\n10,8.0\n',
  },
];
