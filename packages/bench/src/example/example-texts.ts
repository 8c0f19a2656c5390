// Written by scripts/write-documents.ts from examples/: change the example there, not here.

/** A complete launch of our own invention: green light for an observing loft. The text of `examples/observing-loft.launch.yaml`. */
export const observingLoftLaunch = `# An invented bench: a green laser on the workbench lights a guide beam in the observing loft, 18 m of fibre away.
# It works. Three things keep it from working better: the collimator was adjusted for red light, its focal length
# suits a wider beam, and the fibre has a joint on the way.
coreward: 1
name: green guide light to the observing loft
laser:
  name: green module
  wavelength: 520 nm ± 2 nm
  power: { value: 11.5 mW ± 8 %, origin: datasheet }
  polarization: linear
  beam:
    waist diameter: { value: 0.84 mm ± 0.05 mm, origin: measured, note: "knife edge, 3 scans" }
    waist position: 0 mm
    quality: 1.15
path:
  - space: 210 mm
  - mirror:
      name: M1
      angle: 45°
      reflectance: 97 %
      clear aperture: 22 mm
      mount: { lever: 38 mm, pitch: 0.25 mm }
  - space: 150 mm
  - mirror:
      name: M2
      angle: 45°
      reflectance: 97 %
      clear aperture: 22 mm
      mount: { lever: 38 mm, pitch: 0.25 mm }
  - space: 95 mm
collimator:
  name: red one, 6.2 mm
  focal length: { value: 6.2 mm, at: 635 nm, origin: datasheet }
  clear aperture: 5 mm
  glass: N-BK7
  surfaces: { count: 2, coating: 0.5 % }
  focus: { set for: 635 nm, thread: 0.5 mm }
  connector: FC/PC
fibre:
  name: loft line
  profile: step
  core diameter: 8.2 µm
  numerical aperture: 0.13
  cladding diameter: 125 µm
  coating: strips
  length: 18 m
  ends: { in: flat, out: flat }
  connectors:
    in: FC/PC
    out: LC
    between: [{ loss: 0.3 dB ± 0.2 dB }]
  bends: [{ radius: 30 mm, turns: 2 }]
reference: { wavelength: 635 nm, power: 0.8 mW, tolerates: 1 mW }
output: { collimator: { focal length: 8 mm } }
`;

/** The drawer beside that bench. The text of `examples/observing-loft.drawer.yaml`. */
export const observingLoftDrawer = `# Everything in the invented drawer beside the invented bench. Half of it has no label left.
coreward: 1
name: the drawer beside the bench
lasers:
  - name: green module
    wavelength: 520 nm ± 2 nm
    power: { value: 11.5 mW ± 8 %, origin: datasheet }
    polarization: linear
    beam:
      waist diameter: { value: 0.84 mm ± 0.05 mm, origin: measured, note: "knife edge, 3 scans" }
      quality: 1.15
  - name: red alignment laser
    wavelength: 635 nm ± 3 nm
    power: 0.8 mW
    polarization: linear
    beam: { diameter: 1.6 mm, at: 500 mm }
  - name: blue diode
    wavelength: 450 nm ± 5 nm
    power: 40 mW
    polarization: linear
    beam:
      x: { diameter: 3.1 mm, divergence: 0.6 mrad, quality: 3.2 within 0.8 }
      y: { diameter: 1.2 mm, divergence: 0.9 mrad }
collimators:
  - name: red one, 6.2 mm
    focal length: { value: 6.2 mm, at: 635 nm, origin: datasheet }
    clear aperture: 5 mm
    glass: N-BK7
    surfaces: { count: 2, coating: 0.5 % }
    focus: { set for: best, thread: 0.5 mm }
    connector: FC/PC
  - name: long one, 11 mm
    focal length: { value: 11 mm, at: 635 nm, origin: datasheet }
    clear aperture: 5.5 mm
    surfaces: { count: 2, coating: 0.5 % }
    focus: { set for: best, thread: 0.5 mm }
    connector: FC/PC
  - name: stubby one, 4 mm
    focal length: { value: 4 mm, at: 780 nm, origin: datasheet }
    clear aperture: 4 mm
    glass: D-ZK3
    surfaces: { count: 2, coating: 0.5 % }
    connector: FC/APC
  - name: achromat, 9 mm
    focal length: 9 mm within 3 %
    clear aperture: 6 mm
    focal shift: 0
    surfaces: { count: 3, coating: 1 % }
    connector: SMA
  - name: nameless lens from a pointer
    focal length: { value: 8.1 mm ± 0.4 mm, origin: measured, note: image of a window across the room }
    clear aperture: 6.5 mm
    glass: PMMA
    surfaces: { count: 2, coating: none }
    spherical aberration: 0.3
  - name: plano-convex, 25 mm
    focal length: 25 mm
    clear aperture: 11 mm
    surfaces: { count: 2, coating: none }
    spherical aberration: 0.4
fibres:
  - name: loft line
    profile: step
    core diameter: 8.2 µm
    numerical aperture: 0.13
    cladding diameter: 125 µm
    coating: strips
    length: 18 m
    connectors: { in: FC/PC, out: LC, between: [{ loss: 0.3 dB ± 0.2 dB }] }
    bends: [{ radius: 30 mm, turns: 2 }]
  - name: yellow patch lead
    type: G.652.D
    length: 2 m
    connectors: { in: FC/APC, out: FC/APC }
  - name: orange patch lead
    type: OM2
    length: 3 m
    connectors: { in: SC, out: SC }
  - name: single-mode for red
    profile: step
    core diameter: 4.3 µm
    numerical aperture: 0.12
    length: 2 m
    connectors: { in: FC/PC, out: FC/PC }
  - name: thick plastic one
    profile: step
    material: acrylic
    core diameter: 0.98 mm
    numerical aperture: 0.5
    cladding diameter: 1 mm
    coating: guides
    length: 5 m
mirrors:
  # &M1 lets the path below repeat this mirror as *M1
  - &M1
    name: M1
    reflectance: 97 %
    clear aperture: 22 mm
    mount: { lever: 38 mm, pitch: 0.25 mm }
  - &M2
    name: M2
    reflectance: 97 %
    clear aperture: 22 mm
    mount: { lever: 38 mm, pitch: 0.25 mm }
  - name: dusty one
    reflectance: 86 % ± 4 %
    clear aperture: 10 mm
detectors:
  - name: small photodiode
    kind: photodiode
    responsivity: { value: 0.26 A/W, at: 520 nm }
  - name: garden lamp cell
    kind: solar cell
  - name: phone
    kind: camera
references:
  - name: red pen
    wavelength: 635 nm
    power: 0.8 mW
    tolerates: 1 mW
path:
  - space: 210 mm
  - mirror: *M1
  - space: 150 mm
  - mirror: *M2
  - space: 95 mm
`;

/** The least that forecasts. The text of `examples/five-lines.launch.yaml`. */
export const fiveLinesLaunch = `coreward: 1
laser: { wavelength: 520 nm, power: 5 mW, beam: { diameter: 1.1 mm, at: 300 mm } }
collimator: { focal length: 8 mm }
fibre: { type: G.652.D }
`;
