/** Characters that XML 1.0 has no way to hold, lone surrogates included. */
const UNFIT = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

const entities: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** The text for an XML element or attribute. What XML cannot hold becomes U+FFFD, so that its loss is seen. */
export function xmlText(text: string): string {
  return text.replace(UNFIT, '\ufffd').replace(/[&<>"']/g, (character) => entities[character] ?? character);
}
