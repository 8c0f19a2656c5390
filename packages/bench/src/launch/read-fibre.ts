import { isAngled } from '@coreward/optics';
import type { Read } from '../document/form.ts';
import { defaultEntry, unreadEntry } from '../document/read-entry.ts';
import { type Report, type Spot, under } from '../document/report.ts';
import type { Entry } from '../quantity/quantity.ts';
import { writeValue } from '../units/write.ts';
import { mustBeOfItsType } from './against-type.ts';
import { claddingDiameterForm, type fibreForm } from './fibre-form.ts';
import { fibreOfType } from './fibre-types.ts';
import type { Connector, Fibre, FibreEnd } from './launch.ts';

/** Up to this core diameter silica fibres have a cladding of 125 µm; above, makers differ. Common practice, no source. */
const largestUsualCore = 65e-6;

/** A fibre as it was read: what is not written follows from its type, or from what is usual. */
export function fibreFrom(read: Read<typeof fibreForm>, spot: Spot, report: Report): Fibre {
  const type = read.type === null ? null : fibreOfType(read.type, spot);
  if (type !== null) mustBeOfItsType(read, type, spot, report);
  const saidMaterial = read.material ?? type?.material ?? null;
  const material = saidMaterial ?? 'silica';
  const coreDiameter =
    read['core diameter'] ?? type?.coreDiameter ?? unreadEntry(`${spot.key}.core diameter`);
  const fibre: Fibre = {
    name: read.name,
    type: read.type,
    profile: read.profile ?? type?.profile ?? 'step',
    material,
    materialSaid: saidMaterial !== null,
    coreDiameter,
    numericalAperture:
      read['numerical aperture'] ?? type?.numericalAperture ?? unreadEntry(`${spot.key}.numerical aperture`),
    claddingDiameter:
      read['cladding diameter'] ??
      type?.claddingDiameter ??
      usualCladding(material, coreDiameter, spot, report),
    coating: read.coating,
    length: read.length,
    attenuation: read.attenuation,
    ends: {
      in: endFrom(read.ends.in, connectorFrom(read.connectors.in), 'in', spot, report),
      out: endFrom(read.ends.out, connectorFrom(read.connectors.out), 'out', spot, report),
    },
    connectors: {
      in: connectorFrom(read.connectors.in),
      out: connectorFrom(read.connectors.out),
      between: read.connectors.between,
    },
    bends: read.bends,
  };
  mustFitTogether(fibre, spot, report);
  return fibre;
}

/** Cladding diameters that fibres are sold with, m; common practice, no source. */
const tradeCladdings = [80e-6, 125e-6, 140e-6, 220e-6, 250e-6] as const;

/** The narrowest of them that leaves a core its cladding, or a tenth more than a wider core; m. */
function likelyCladding(coreDiameter: number): number {
  const least = coreDiameter * 1.1;
  // a core of 200 µm times 1.1 may miss 220 µm by a rounding
  return tradeCladdings.find((diameter) => diameter >= least * (1 - 1e-9)) ?? least;
}

function usualCladding(material: Fibre['material'], coreDiameter: Entry, spot: Spot, report: Report): Entry {
  const place = under(spot, 'cladding diameter');
  if (material === 'silica' && coreDiameter.value <= largestUsualCore) {
    const why = 'nearly every silica fibre with so narrow a core; common practice, no source';
    return defaultEntry(claddingDiameterForm, '125 µm ± 2 %', why, place, report);
  }
  if (!Number.isNaN(coreDiameter.value)) {
    const what = '`cladding diameter` is missing, and fibres of this kind differ';
    report.refuse(
      place.path,
      what,
      `Write \`cladding diameter: ${writeValue(likelyCladding(coreDiameter.value), 'length')}\` with your own value.`,
    );
  }
  return unreadEntry(place.key);
}

function connectorFrom(read: Connector | 'none'): Connector | null {
  return read === 'none' ? null : read;
}

function endFrom(
  written: FibreEnd | null,
  connector: Connector | null,
  side: 'in' | 'out',
  spot: Spot,
  report: Report,
): FibreEnd {
  const angled = connector !== null && isAngled(connector);
  if (written === 'flat' && angled) {
    const what = `an ${connector} connector ends in an angled facet, not a flat one`;
    report.refuse(under(under(spot, 'ends'), side).path, what, 'Write `angled 8°`.');
  }
  return written ?? (angled ? 'angled 8°' : 'flat');
}

function mustFitTogether({ coreDiameter, claddingDiameter, bends }: Fibre, spot: Spot, report: Report): void {
  if (claddingDiameter.value < coreDiameter.value) {
    const what = `the cladding is narrower than the core of ${writeValue(coreDiameter.value, 'length')}`;
    const mend = 'Write the diameter of core and cladding together, without coating.';
    report.refuse(under(spot, 'cladding diameter').path, what, mend);
  }
  bends.forEach(({ radius }, index) => {
    if (radius.value <= claddingDiameter.value) {
      const what = `a fibre of ${writeValue(claddingDiameter.value, 'length')} breaks before it is bent so far`;
      const place = under(under(under(spot, 'bends'), index + 1), 'radius');
      report.refuse(place.path, what, `Write \`radius: 30 mm\` with your own value.`);
    }
  });
}
