import {
  GraphQLError,
  Kind,
  type ASTVisitor,
  type FragmentDefinitionNode,
  type SelectionSetNode,
  type ValidationContext,
} from 'graphql';

const DEEPEST = 15;
const MOST_FIELDS = 1_000;

/**
 * Validation rule: refuses requests that nest deeper, or with fragments written out ask for more
 * fields, than any page does. Introspection is let through: its depth is fixed by the schema's.
 */
export function queryLimits(context: ValidationContext): ASTVisitor {
  return {
    OperationDefinition(operation) {
      const { depth, fields } = measure(operation.selectionSet, context, new Set());
      if (depth > DEEPEST || fields > MOST_FIELDS) {
        context.reportError(
          new GraphQLError(
            `The request is ${depth} levels deep and asks for ${fields} fields; at most ${DEEPEST} levels and ${MOST_FIELDS} fields are answered. Ask for less at a time.`,
            { nodes: [operation] },
          ),
        );
      }
      return false;
    },
  };
}

interface Size {
  readonly depth: number;
  readonly fields: number;
}

/** @param within names of the fragments being written out, so that a circle of them ends */
function measure(
  { selections }: SelectionSetNode,
  context: ValidationContext,
  within: ReadonlySet<string>,
): Size {
  let depth = 0;
  let fields = 0;
  const add = (size: Size, levels: number): void => {
    depth = Math.max(depth, size.depth + levels);
    fields = Math.min(fields + size.fields, Number.MAX_SAFE_INTEGER);
  };
  for (const selection of selections) {
    switch (selection.kind) {
      case Kind.FIELD:
        if (selection.name.value.startsWith('__')) break;
        fields += 1;
        if (selection.selectionSet === undefined) depth = Math.max(depth, 1);
        else add(measure(selection.selectionSet, context, within), 1);
        break;
      case Kind.INLINE_FRAGMENT:
        add(measure(selection.selectionSet, context, within), 0);
        break;
      case Kind.FRAGMENT_SPREAD: {
        const fragment = fragmentOf(context, selection.name.value);
        if (fragment === undefined || within.has(fragment.name.value)) break;
        const inside = new Set([...within, fragment.name.value]);
        add(measure(fragment.selectionSet, context, inside), 0);
        break;
      }
    }
    // Fragments inside fragments multiply: past the limit there is nothing more to learn.
    if (fields > MOST_FIELDS) break;
  }
  return { depth, fields };
}

function fragmentOf(context: ValidationContext, name: string): FragmentDefinitionNode | undefined {
  return context.getFragment(name) ?? undefined;
}
