/** The overview's map as a picture of its own: a drawing (SVG), or dots (PNG) of so many to a millimetre. */

/** The map in a paper's text, as an SVG file that stands alone; `null` where the paper has none. */
export function mapDrawing(html: string): string | null {
  const svg = new DOMParser().parseFromString(html, 'text/html').querySelector('svg.overview-map');
  if (svg === null) return null;
  svg.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  svg.setAttribute('font-family', 'Arimo, Arial, Helvetica, sans-serif');
  return new XMLSerializer().serializeToString(svg);
}

/** 300 dots an inch. */
const DOTS = 300 / 25.4;

/** The same as PNG. Rejects where the browser cannot draw it. */
export async function mapPicture(drawing: string): Promise<Blob> {
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/u.exec(drawing) ?? [];
  const image = new Image();
  const url = URL.createObjectURL(new Blob([drawing], { type: 'image/svg+xml' }));
  try {
    await new Promise<void>((resolve, reject) => {
      image.addEventListener('load', () => resolve());
      image.addEventListener('error', () => reject(new Error('the drawing could not be read')));
      image.src = url;
    });
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [Math.round(Number(width) * DOTS), Math.round(Number(height) * DOTS)];
    const pen = canvas.getContext('2d')!;
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise((resolve, reject) => {
      canvas.toBlob((blob) => (blob === null ? reject(new Error('no picture was made')) : resolve(blob)), 'image/png');
    });
  } finally {
    URL.revokeObjectURL(url);
  }
}
