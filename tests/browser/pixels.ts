import type { Page } from 'playwright';

/** A picture, row by row, four numbers a pixel: red, green, blue, alpha, 0 to 255. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray<ArrayBuffer>;
}

/** What a picture in PNG shows, decoded by the browser. */
export async function pixelsOf(page: Page, png: Buffer): Promise<Pixels> {
  const [width, height, base64] = await page.evaluate(
    async (address) => {
      const image = new Image();
      image.src = address;
      await image.decode();
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [image.width, image.height];
      const context = canvas.getContext('2d');
      context?.drawImage(image, 0, 0);
      const bytes = context?.getImageData(0, 0, image.width, image.height).data ?? new Uint8ClampedArray();
      let text = '';
      for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
      return [image.width, image.height, btoa(text)] as const;
    },
    `data:image/png;base64,${png.toString('base64')}`,
  );
  return { width, height, data: new Uint8ClampedArray(Buffer.from(base64, 'base64')) };
}
