import type { HowTo } from './how-to.ts';

const end =
  'Do not look into the end, and never through a magnifier while a laser is connected. Take a lamp or a microwatt of light.';
const glass =
  'Cut ends are splinters of glass: wear glasses, collect them on tape, and do not eat at that bench.';

/** Fibre and detector. */
export const fibreHowTos: readonly HowTo[] = [
  {
    gauge: 'far-field-cone',
    steps: [
      'Fix the end of the fibre in front of a card with a ruler. Fill all modes: a wide cone at the launch, some metres of fibre.',
      'Measure the spot’s radius at six distances from one to several centimetres. Keep to one level: 5 % of the peak, or 1/e².',
      'Write the level above the table. The two are different numbers, and neither is √(n₁² − n₂²).',
    ],
    cautions: [end],
    example: '# level: 5 %\nz (mm),radius (mm)\n10,2.4\n20,4.6\n30,6.9\n40,9.0\n50,11.4\n60,13.6\n',
  },
  {
    gauge: 'far-field-profile',
    steps: [
      'Swing a small detector around the fibre’s end, or take a line through a picture of a screen.',
      'Read from dark to dark, at forty places or more, twice as far out as the light seems to reach.',
    ],
    cautions: [end],
    example: `angle (deg),signal (mV)\n${[
      0.2, 0.3, 0.5, 0.9, 1.9, 4.2, 9, 18, 34, 58, 90, 130, 172, 208, 234, 243, 235, 207, 171, 131, 91, 57,
      33, 18.5, 8.8, 4.1, 2, 0.9, 0.4, 0.3, 0.2,
    ]
      .map((value, i) => `${i - 15},${value}`)
      .join('\n')}\n`,
  },
  {
    gauge: 'core-picture',
    steps: [
      'Light the far end with a lamp, and photograph this end through a magnifier or a microscope.',
      'Count pixels across the lit core at half of its brightness, and across the cladding, in the same picture.',
    ],
    cautions: [end],
    example:
      '# cladding diameter: 125 µm ± 0.7 µm\ncore (px),cladding (px)\n212,531\n214,530\n211,532\n213,531\n',
  },
  {
    gauge: 'mode-count',
    steps: [
      'Move the launch about and watch the far end on paper: count the patterns that differ, orientations once.',
      'Or raise the wavelength until only the plain spot is left, with the fibre in one loose loop, and note it as the cut-off.',
    ],
    cautions: [end],
    example: '# cut-off: 610 nm\n# numerical aperture: 0.12 ± 0.005\n',
  },
  {
    gauge: 'cut-back',
    steps: [
      'Launch, strip the cladding light, and read the power at the far end.',
      'Without touching the launch, cut the fibre a good deal shorter, cleave, and read again.',
      'Cleave and read each length twice: what a new end repeats to is most of the doubt.',
    ],
    cautions: [glass, 'Switch the laser off while you cut: a broken end sends its light anywhere.'],
    example: 'length (m),power (µW)\n18,402\n9,552\n2,701\n',
  },
  {
    gauge: 'substitution',
    steps: [
      'Read the power without the joint, then with it. Clean both ends first.',
      'Open and close it for each pair: four pairs or more.',
    ],
    cautions: [
      'Switch off before a connector is opened: the open end sends out all the light. Dirt burns in when it is closed again.',
    ],
    example: 'without (µW),with (µW)\n540,503\n541,511\n539,507\n540,499\n',
  },
  {
    gauge: 'cladding-light',
    steps: [
      'Read the power. Wind the fibre ten times around a pencil-thick rod near the far end, or put a drop of oil on bare cladding, and read again.',
      'Undo it and repeat. A coil takes light from weakly guided modes as well: try a wider one.',
    ],
    cautions: ['What is stripped leaves sideways: at some hundred milliwatts the coating there scorches.'],
    example: 'before (µW),after (µW)\n610,548\n611,551\n609,547\n610,550\n',
  },
  {
    gauge: 'photodiode',
    steps: [
      'Put the resistor across the diode, the multimeter across the resistor, and the whole beam on the diode.',
      'Read the voltage with the light on, and once with it off.',
      'Put half the resistor in: the voltage must halve. If it does not, the diode was saturated.',
    ],
    cautions: ['A bare diode mirrors a third of the beam: tilt it, and find out where that goes.'],
    example:
      '# load: 220 ohm ± 1 %\n# wavelength: 635 nm\n# dark voltage: 0.2 mV\n# half load voltage: 43.9 mV\nvoltage (mV)\n87.6\n87.9\n87.4\n87.8\n',
  },
  {
    gauge: 'solar-cell',
    steps: [
      'Set the multimeter to a current range and connect it straight to the cell. Read with the light on and with it off.',
      'Check that the meter takes less than 20 mV. The open voltage says nothing about power.',
    ],
    cautions: ['The cell’s glass throws some of the beam back.'],
    example: '# wavelength: 532 nm\ncurrent (mA),dark (mA)\n1.83,0.004\n1.82,0.004\n1.84,0.004\n1.82,0.004\n',
  },
  {
    gauge: 'calorimeter',
    steps: [
      'Blacken a few grams of copper or aluminium with soot or matt paint, glue a thermistor on, and hang it on threads out of the draught.',
      'Read every ten seconds: three minutes in the dark, five with the light on, five in the dark.',
      'Heat capacity: mass times specific heat (copper 385, aluminium 900 J/kg K), and some for glue and thermistor.',
    ],
    cautions: ['Black surfaces scatter a few per cent. Above some watts paint smokes: stay below.'],
    example: `# heat capacity: 2.05\n# r25: 10 kohm\n# beta: 3950\ntime (s),resistance (ohm),light\n${[
      10462, 10460, 10463, 10461, 10462, 10460, 10380, 10304, 10231, 10165, 10100, 10040, 9982, 9928, 10003,
      10074, 10141, 10203, 10237, 10268, 10296,
    ]
      .map((value, i) => `${30 * i},${value},${i >= 5 && i < 13 ? 1 : 0}`)
      .join('\n')}\n`,
  },
  {
    gauge: 'camera-linearity',
    steps: [
      'Lock exposure, gain, white balance and focus. Photograph the same spot at known levels: filters, two polarisers, distances.',
      'Note the mean code of the same patch in each, and with the lens covered.',
    ],
    cautions: [
      'Change the light, not the camera: with a laser put the filter before the camera, never take one out of it.',
    ],
    example: '# dark code: 3\nlight,code\n1,28\n2,54\n4,104\n8,203\n',
  },
];
