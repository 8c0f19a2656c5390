import {
  defaulting,
  list,
  map,
  nameForm,
  optional,
  quantity,
  required,
  word,
} from '../document/form-builders.ts';
import { connectorForm } from './connector-form.ts';
import { fibreTypes } from './fibre-types.ts';
import {
  apertureNumberDoubt,
  attenuationDoubt,
  bendRadiusDoubt,
  claddingDiameterDoubt,
  coreDiameterDoubt,
  fibreLengthDoubt,
  jointDoubt,
  turnsDoubt,
} from './usual-doubts.ts';

/** How the outer diameter of the glass is written. */
export const claddingDiameterForm = quantity('length', '1 µm', '20 mm', claddingDiameterDoubt, '125 µm');

const endForm = word(['flat', 'angled 8°', 'coated'], {
  'angled 8 °': 'angled 8°',
  'angled 8 deg': 'angled 8°',
});
const flatEnd = 'flat, or `angled 8°` where the connector is an APC one';

const bendForm = map({
  radius: required(
    'of the bend, not its diameter',
    quantity('length', '1 mm', '100 m', bendRadiusDoubt, '30 mm'),
  ),
  turns: defaulting(
    'how often round; may be a fraction',
    quantity('turns', '> 0', '1e6', turnsDoubt, '2'),
    '1',
    'a loop',
  ),
});

const jointForm = map({
  loss: defaulting(
    'of the mated pair',
    quantity('loss', '0 dB', '60 dB', jointDoubt, '0.3 dB'),
    '0.3 dB ± 0.2 dB',
    'clean parts of one kind; common practice, no source',
  ),
});

const fromType = 'as `type` says';

const fibreKeys = {
  type: optional(
    'a standard designation, which fills in what is not written',
    word(fibreTypes),
    'core diameter and numerical aperture are written',
  ),
  profile: optional(
    'of the core: `step`, or `graded` for the truncated parabola',
    word(['step', 'graded']),
    `${fromType}; without it, step`,
  ),
  material: optional('`silica` or `acrylic`', word(['silica', 'acrylic']), `${fromType}; without it, silica`),
  'core diameter': optional(
    'not the mode field diameter',
    quantity('length', '0.5 µm', '10 mm', coreDiameterDoubt, '8.2 µm'),
    fromType,
  ),
  'numerical aperture': optional(
    '√(n_core² − n_cladding²), on the axis if graded',
    quantity('number', '0.01', '1', apertureNumberDoubt, '0.13'),
    fromType,
  ),
  'cladding diameter': optional(
    'of the glass, without coating',
    claddingDiameterForm,
    `${fromType}; without it, 125 µm ± 2 % for silica with a core up to 65 µm, else it must be written`,
  ),
  coating: defaulting(
    'whether it lets cladding light out (`strips`) or keeps it in (`guides`)',
    word(['strips', 'guides', 'unknown']),
    'unknown',
    'both cases are then in the interval',
  ),
  length: defaulting(
    'from end to end',
    quantity('length', '1 mm', '1000 km', fibreLengthDoubt, '18 m'),
    '2 m within 1 m',
    'a patch lead; its attenuation hardly counts',
  ),
  attenuation: optional(
    "at the launch's wavelength",
    quantity('attenuation', '0 dB/km', '100 dB/m', attenuationDoubt, '15 dB/km'),
    'estimated for the wavelength and the material, in a wide interval',
  ),
  ends: defaulting(
    'their polish',
    map({
      in: optional('where the light enters', endForm, flatEnd),
      out: optional('where the light leaves', endForm, flatEnd),
    }),
    '{}',
    'its keys have defaults of their own',
  ),
  connectors: defaulting(
    'what the ends carry, and joints on the way',
    map({
      in: defaulting('where the light enters', connectorForm, 'none', 'not known'),
      out: defaulting('where the light leaves', connectorForm, 'none', 'not known'),
      between: defaulting('joints on the way', list(jointForm), '[]', 'one piece'),
    }),
    '{}',
    'its keys have defaults of their own',
  ),
  bends: defaulting(
    'bends narrow enough to count',
    list(bendForm),
    '[]',
    'laid out loosely, in loops of 0.3 m',
  ),
} as const;

const others = Object.keys(fibreKeys);
const variants = [
  { needs: ['type'], allows: ['name', ...others] },
  {
    needs: ['core diameter', 'numerical aperture'],
    allows: ['name', ...others.filter((key) => key !== 'type')],
  },
];

/** How a fibre is written. */
export const fibreForm = map(
  { name: optional('what you call it', nameForm, 'it has no name'), ...fibreKeys },
  variants,
);

/** In a drawer a part has a name, or it could not be asked for. */
export const namedFibreForm = map({ name: required('what you call it', nameForm), ...fibreKeys }, variants);
