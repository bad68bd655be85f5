/** An element of an XML document, read strictly. */
export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Element[];
  /** Text directly in it, its entities resolved. */
  readonly text: string;
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

function plainText(text: string): string {
  if (/[<>]/.test(text)) throw new Error(`a bracket in text: ${text}`);
  return text.replace(/&([^;]*);?/g, (whole, name: string) => {
    const character = ENTITIES[name];
    if (character === undefined || !whole.endsWith(';')) throw new Error(`an unknown entity: ${whole}`);
    return character;
  });
}

function attributesOf(text: string): Record<string, string> {
  const found: Record<string, string> = {};
  const rest = text.replace(/\s+([A-Za-z][\w:-]*)="([^"<]*)"/g, (_, name: string, value: string) => {
    if (name in found) throw new Error(`twice: ${name}`);
    found[name] = plainText(value);
    return '';
  });
  if (rest.trim() !== '') throw new Error(`not an attribute: ${rest}`);
  return found;
}

interface Open {
  readonly name: string;
  readonly attributes: Record<string, string>;
  readonly children: Element[];
  text: string;
}

/**
 * What the writers here may write of XML, and nothing else: one root, every element closed in order, attributes quoted and
 * named once, five entities, no comments, no sections. Throws at the first thing that is not.
 */
export function readXml(document: string): Element {
  const declaration = '<?xml version="1.0" encoding="UTF-8"?>\n';
  if (!document.startsWith(declaration)) throw new Error('no declaration');
  const root: Open = { name: '', attributes: {}, children: [], text: '' };
  const open = [root];
  const body = document.slice(declaration.length);
  const pieces = body.match(/<[^<>]*>|[^<>]+|[<>]/g) ?? [];
  for (const piece of pieces) {
    const here = open.at(-1) ?? root;
    const closing = /^<\/([\w:-]+)>$/.exec(piece);
    const opening = /^<([A-Za-z][\w:-]*)((?:\s+[^<>]*?)?)(\/?)>$/.exec(piece);
    if (closing) {
      if (here.name !== closing[1]) throw new Error(`${piece} closes ${here.name}`);
      open.pop();
    } else if (opening) {
      const [, name = '', attributes = '', alone] = opening;
      const made: Open = { name, attributes: attributesOf(attributes), children: [], text: '' };
      here.children.push(made);
      if (alone !== '/') open.push(made);
    } else here.text += plainText(piece);
  }
  const [only] = root.children;
  if (open.length !== 1 || root.children.length !== 1 || !only || root.text.trim() !== '')
    throw new Error('not one root');
  return only;
}

/** Every element at or below one. */
export const everyElement = (element: Element): Element[] => [element, ...element.children.flatMap(everyElement)];
