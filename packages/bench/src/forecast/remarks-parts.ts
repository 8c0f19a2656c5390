import { mates } from '@coreward/optics';
import type { Connector } from '../launch/launch.ts';
import type { Remark } from './expected.ts';
import { lossText } from './remark-text.ts';
import type { Told } from './told.ts';

/** What single parts say: clipping, connectors, a quantity whose default doubt dominates. */
export function partRemarks(told: Told): readonly Remark[] {
  return [...clipping(told), ...connector(told), ...dominant(told)];
}

function clipping(told: Told): readonly Remark[] {
  return [...atTheLens(told), ...onTheWay(told)];
}

/** What the lens clips, and what its edge makes of the rest: the overlap is computed with it, so both are told at once. */
function atTheLens({ ledger }: Told): readonly Remark[] {
  const clip = ledger.find(({ id }) => id === 'lens-clip')?.transmission ?? 1;
  if (clip >= 0.99) return [];
  const form = ledger.find(({ id }) => id === 'aberration')?.transmission ?? 1;
  const mend = 'Use a wider lens, or a smaller beam there.';
  if (form <= 1.01) {
    const more = form < 0.99 ? ` and what is left costs another ${lossText(form)} by its rings` : '';
    return [
      {
        id: 'lens-clip-cuts',
        kind: 'change',
        text: `The lens clips ${lossText(clip)} off the beam${more}. ${mend}`,
      },
    ];
  }
  const net = clip * form;
  const together = net > 0.99 ? 'nothing' : lossText(net);
  return [
    {
      id: 'lens-clip-cuts',
      kind: net < 0.97 ? 'change' : 'know',
      text: `The lens clips ${lossText(clip)} off the beam, but what is left suits the fibre ${lossText(1 / form)} better than the whole would: together they cost ${together}.${net < 0.97 ? ` ${mend}` : ''}`,
    },
  ];
}

/** Before the lens only what is cut off is computed. */
function onTheWay({ ledger }: Told): readonly Remark[] {
  return ledger
    .filter(
      ({ id, transmission }) => (id.startsWith('clip-') || id.startsWith('stop-')) && transmission < 0.99,
    )
    .map(({ id, label, transmission }) => ({
      id: `${id}-cuts`,
      kind: 'change',
      text: `The beam is ${label.startsWith('stop') ? `cut by ${label}` : label}: ${lossText(transmission)}. What the edge does to the form of the rest is not computed. Use a wider part, or a smaller beam there.`,
    }));
}

function connector({ launch }: Told): readonly Remark[] {
  const barrel = launch.collimator?.connector ?? null;
  const plug = launch.fibre.connectors.in;
  if (barrel === null || plug === null) return [];
  const said = matingText(plug, barrel);
  return said === null ? [] : [{ id: 'connector', kind: 'change', text: said }];
}

/** Why a plug does not go into a barrel as it is, or null. */
export function matingText(plug: Connector, barrel: Connector): string | null {
  const mating = mates(plug, barrel);
  switch (mating.kind) {
    case 'sleeve':
      return plug === barrel
        ? null
        : `The fibre’s ${plug} fits the ${barrel} barrel’s ferrule, but needs an adapter for its shell.`;
    case 'adapter':
      return `The fibre’s ${plug} does not fit the collimator’s ${barrel} barrel without an adapter.`;
    case 'never':
      return `The fibre’s ${plug} must not go into the collimator’s ${barrel} barrel: an angled end and a flat one do not meet.`;
  }
}

function dominant(told: Told): readonly Remark[] {
  const first = told.nextMeasurement[0];
  if (first === undefined || first.narrows > 0.8) return [];
  const entry = findEntry(told.launch, first.quantity);
  if (entry === null || entry.defaulted === 'nothing') return [];
  return [
    {
      id: 'default-doubt-dominates',
      kind: 'know',
      text: `Most of the doubt comes from ${first.quantity}, and its uncertainty is only our default: measure it first.`,
    },
  ];
}

function findEntry(node: unknown, key: string): { readonly defaulted: string } | null {
  if (node === null || typeof node !== 'object') return null;
  if ('key' in node && 'defaulted' in node)
    return node.key === key ? { defaulted: String(node.defaulted) } : null;
  for (const child of Object.values(node)) {
    const found = findEntry(child, key);
    if (found !== null) return found;
  }
  return null;
}
