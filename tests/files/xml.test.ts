import fc from 'fast-check';
import { expect, it } from 'vitest';
import { xmlText } from '$lib/files/xml.ts';

it('turns markup into text', () => {
  expect(xmlText(`<script>"a" & 'b'</script>`)).toBe('&lt;script&gt;&quot;a&quot; &amp; &#39;b&#39;&lt;/script&gt;');
});

it('shows what XML cannot hold as a replacement character', () => {
  expect(xmlText('a\u0000b\u0007\ud800\uffffé日😀')).toBe('a\ufffdb\ufffd\ufffd\ufffdé日😀');
});

it('leaves no character with a meaning to XML, for any text', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      const escaped = xmlText(text);
      expect(escaped.replace(/&(?:amp|lt|gt|quot|#39);/g, '')).not.toMatch(/[&<>"']/);
      expect(escaped).not.toMatch(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u);
    }),
  );
});
