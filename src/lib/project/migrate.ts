import { failure, success, type Result } from './fault.ts';
import { got } from './got.ts';
import { FORMAT, VERSION } from './schema.ts';
import { fromVersion1 } from './version1.ts';

type Document = Readonly<Record<string, unknown>>;

/**
 * What turns a document of one version into one of the next: `steps[0]` goes from version 1 to 2, and so on. A step gets
 * a document of its own version that has not been checked yet and must not change it.
 */
const steps: readonly ((older: Document) => Document)[] = [fromVersion1];

/**
 * Before there were rules for it, a design point was a driver and a distance, or null where nobody knew it: such files are of
 * version 2 as well.
 */
function withDesignRule(document: Document): Document {
  const { speaker } = document;
  if (!isDocument(speaker)) return document;
  const { designPoint } = speaker;
  if (designPoint === null) return { ...document, speaker: { ...speaker, designPoint: { rule: 'none' } } };
  if (!isDocument(designPoint) || 'rule' in designPoint || !('driver' in designPoint)) return document;
  return { ...document, speaker: { ...speaker, designPoint: { rule: 'measured', ...designPoint } } };
}

const isDocument = (value: unknown): value is Document =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The document brought to the present version, or why it cannot be. */
export function migrate(value: unknown): Result<Document> {
  if (!isDocument(value)) return failure({ pointer: '', message: `expected an object, got ${got(value)}` });
  if (value.format !== FORMAT) {
    return failure({ pointer: '/format', message: `expected "${FORMAT}", got ${got(value.format)}` });
  }
  const { version } = value;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return failure({
      pointer: '/version',
      message: `expected a whole number from 1 to ${VERSION}, got ${got(version)}`,
    });
  }
  if (version > VERSION) {
    return failure({
      pointer: '/version',
      message: `expected ${VERSION} or lower, got ${version}: a newer Wedgewright wrote this file`,
    });
  }
  return success(withDesignRule(steps.slice(version - 1).reduce((document, step) => step(document), value)));
}
