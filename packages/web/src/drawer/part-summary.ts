import { type FieldNode, type KeptPart, partFields, Refusal } from '@coreward/bench';

/** The first few things that are written about a part, besides its name: "520 nm ± 2 nm, 11.5 mW ± 8 %". */
export function partSummary(part: KeptPart): string {
  try {
    return written(partFields(part)).slice(0, 3).join(', ');
  } catch (error) {
    if (error instanceof Refusal) return '';
    throw error;
  }
}

function written(node: FieldNode): readonly string[] {
  switch (node.kind) {
    case 'group':
      return node.fields.flatMap(written);
    case 'quantity':
      return node.written === null ? [] : [node.written.text];
    case 'word':
      return node.written === null || node.words.length < 4 ? [] : [node.written];
    case 'name':
    case 'count':
    case 'list':
      return [];
  }
}
