/** Raw deflate (RFC 1951) by the streams that pages, workers and Node have built in. */
const FORMAT = 'deflate-raw';

export async function deflated(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> {
  const stream = new Blob([bytes]).stream().pipeThrough(new CompressionStream(FORMAT));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

export type Inflated =
  | { readonly kind: 'bytes'; readonly bytes: Uint8Array<ArrayBuffer> }
  /** More than was asked for: reading stopped there. */
  | { readonly kind: 'too-long' }
  /** No deflate stream, one cut short, or one with something after it. */
  | { readonly kind: 'damaged' };

/** The bytes of a deflate stream, at most so many: a stream that unfolds to more is left as soon as it does. */
export async function inflated(bytes: Uint8Array<ArrayBuffer>, most: number): Promise<Inflated> {
  const reader = new Blob([bytes]).stream().pipeThrough(new DecompressionStream(FORMAT)).getReader();
  const chunks: Uint8Array<ArrayBuffer>[] = [];
  let length = 0;
  try {
    for (let next = await reader.read(); !next.done; next = await reader.read()) {
      length += next.value.length;
      if (length > most) {
        await reader.cancel();
        return { kind: 'too-long' };
      }
      chunks.push(next.value);
    }
  } catch {
    return { kind: 'damaged' };
  }
  return { kind: 'bytes', bytes: new Uint8Array(await new Blob(chunks).arrayBuffer()) };
}
