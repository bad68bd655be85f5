import { plainText, type Sentence } from '$lib/project/sentence.ts';

const isSentence = (value: object): value is Sentence => 'template' in value && 'quantities' in value;

/** A value with every sentence in it put into words, in mm. */
export function plainly(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (isSentence(value)) return plainText(value);
  if (Array.isArray(value)) return value.map(plainly);
  return Object.fromEntries(Object.entries(value).map(([key, held]) => [key, plainly(held)]));
}
