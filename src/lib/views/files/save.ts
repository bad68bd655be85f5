/** Kinds of file by their ending. */
const types: Readonly<Record<string, string>> = {
  json: 'application/json',
  svg: 'image/svg+xml',
  png: 'image/png',
  dxf: 'image/vnd.dxf',
  pdf: 'application/pdf',
  zip: 'application/zip',
};

/** Hands a file to the browser's downloads. */
export function saveFile(name: string, content: string | Uint8Array): void {
  const type = types[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream';
  // A copy lies in memory of its own kind, which is what a blob takes.
  const held = typeof content === 'string' ? content : new Uint8Array(content);
  const address = URL.createObjectURL(new Blob([held], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The download has begun by the next turn; the browser keeps what it needs of it.
  setTimeout(() => URL.revokeObjectURL(address));
}

/** The last part of a path. */
export const baseName = (path: string): string => path.slice(path.lastIndexOf('/') + 1);
