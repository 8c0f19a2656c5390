/** A launch for the tests of what is forecast, every value of which may be written otherwise. */

export interface WrittenLaunch {
  readonly waist?: string;
  readonly position?: string;
  readonly quality?: string;
  readonly core?: string;
  readonly aperture?: string;
  readonly profile?: string;
  readonly focal?: string;
  readonly focus?: string;
  readonly space?: string;
  readonly wavelength?: string;
  readonly extra?: string;
  readonly fibre?: string;
  readonly collimator?: string;
}

/** A green beam through a lens into a telecom-like fibre. */
export const inventedLaunch = ({
  waist = '0.8 mm',
  position = '0 mm',
  quality = '1',
  core = '3.2 µm',
  aperture = '0.12',
  profile = 'step',
  focal = '5 mm',
  focus = 'best',
  space = '300 mm',
  wavelength = '532 nm',
  extra = 'misalignment: { x: 0 µm, y: 0 µm, tilt x: 0 mrad, tilt y: 0 mrad, defocus: 0 µm }',
  fibre = '',
  collimator = '',
}: WrittenLaunch = {}) => `coreward: 1
laser: { wavelength: ${wavelength}, power: 4 mW, beam: { waist diameter: ${waist}, waist position: ${position}, quality: ${quality} } }
path:
  - mirror: { name: far, angle: 45°, reflectance: 97 %, mount: { lever: 40 mm, pitch: 0.25 mm } }
  - space: ${space}
  - mirror: { name: near, angle: 45°, reflectance: 97 %, mount: { lever: 40 mm, pitch: 0.25 mm } }
  - space: 100 mm
collimator: { focal length: ${focal}, focal shift: 0, focus: { set for: ${focus} }${collimator} }
fibre: { profile: ${profile}, core diameter: ${core}, numerical aperture: ${aperture}, cladding diameter: 125 µm, length: 3 m, attenuation: 30 dB/km${fibre} }
${extra}
`;
