// How much of a picture is drawn (what is not of its commonest colour), and in how many colours.
export function measure(page, png) {
  return page.evaluate(async data => {
    const image = new Image();
    image.src = `data:image/png;base64,${data}`;
    await image.decode();
    const canvas = Object.assign(document.createElement('canvas'), { width: image.width, height: image.height });
    const context = canvas.getContext('2d');
    context.drawImage(image, 0, 0);
    const pixels = new Uint32Array(context.getImageData(0, 0, image.width, image.height).data.buffer);
    const counts = new Map();
    for (const pixel of pixels) counts.set(pixel, (counts.get(pixel) ?? 0) + 1);
    const paper = Math.max(...counts.values());
    return { width: image.width, height: image.height, drawn: 1 - paper / pixels.length, colours: [...counts.values()].filter(n => n > 50).length };
  }, png.toString('base64'));
}
