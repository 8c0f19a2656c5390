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
  return told.ledger
    .filter(
      ({ id, transmission }) =>
        (id.startsWith('clip-') || id.startsWith('stop-') || id === 'lens-clip') && transmission < 0.99,
    )
    .map(({ id, label, transmission }) => ({
      id: `${id}-cuts`,
      kind: 'change',
      text: `The beam is ${label.startsWith('stop') ? `cut by ${label}` : label}: ${lossText(transmission)}, and what is left has rings that no longer suit a mode. Use a wider part, or a smaller beam there.`,
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
      text: `Most of the doubt comes from ${first.quantity}, and its uncertainty is only our default: measure it (${first.how}), and the interval shrinks to about ${(100 * first.narrows).toFixed(0)} % of its width.`,
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
