// Opens an executed notebook in the notebook view of an editor, code-server, and looks at its charts. Run by hand; what it
// printed is in tests/reference/jupyter/editor.txt, with how the editor was installed.
//
//     node editor.mjs ADDRESS-OF-THE-EDITOR NOTEBOOK CHROMIUM FOLDER-FOR-PICTURES
//
// The notebook's name is one that the editor's list of files shows. The browser knows no host but 127.0.0.1.
import { chromium } from 'playwright-core';
import { measure } from './picture.mjs';

const [address, notebook, executablePath, folder] = process.argv.slice(2);
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1'] });
const found = { notebook, forms: {}, pictures: [] };
try {
  const page = await browser.newPage({ viewport: { width: 1300, height: 1000 } });
  page.setDefaultTimeout(180_000);
  await page.goto(address);
  const rows = page.locator('.explorer-folders-view .monaco-list-row', { hasText: notebook });
  await rows.waitFor();
  await page.waitForTimeout(10_000); // Until the editor's own extensions are there, a notebook opens as text.
  await rows.dblclick();
  await page.waitForSelector('.notebookOverlay .cell-list-container');
  const view = await until(() => page.frames().find(frame => frame.url().includes('/fake.html')));
  const charts = view.locator('.split-batch-page, svg.output-image');
  await view.waitForFunction(() => document.querySelectorAll('.split-batch-page, svg.output-image').length > 0);
  found.browser = browser.version();
  found.ground = await view.evaluate(() => document.body.className.match(/vscode-(light|dark)/)[1]);

  // From the top to the end, each chart once, when all of it is in sight.
  const box = await page.locator('.notebookOverlay .cell-list-container').boundingBox();
  await page.mouse.move(box.x + 300, box.y + 300);
  const seen = new Set();
  for (let step = 0; step < 150; step++) {
    for (const [i, chart] of (await charts.all()).entries()) {
      const place = await chart.boundingBox();
      if (seen.has(i) || !place || place.y < box.y + 10 || place.y + place.height > box.y + box.height - 10) continue;
      await page.waitForTimeout(1_500);
      seen.add(i);
      const form = await chart.evaluate(e => (e.matches('svg') ? 'image/svg+xml' : e.querySelector('.js-plotly-plot') ? 'text/html, interactive' : 'text/html, picture'));
      found.forms[form] = (found.forms[form] ?? 0) + 1;
      found.pictures.push(await measure(page, await page.screenshot({ clip: await chart.boundingBox(), path: `${folder}/editor-chart-${seen.size}.png` })));
      await page.screenshot({ path: `${folder}/editor-${seen.size}.png` });
    }
    await page.mouse.wheel(0, 120);
    await page.waitForTimeout(150);
  }
  await page.screenshot({ path: `${folder}/editor-end.png` });

  async function until(get) {
    for (let second = 0; second < 180; second++) {
      const got = get();
      if (got) return got;
      await page.waitForTimeout(1_000);
    }
    throw new Error('The notebook view did not come up.');
  }
} catch (error) {
  found.failed = String(error);
} finally {
  await browser.close();
}
console.log(JSON.stringify(found));
