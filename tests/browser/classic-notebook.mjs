// Opens a notebook in classic Notebook, as a person would: runs it, asks for completion, stops an endless loop, and looks at the charts.
//
//     node classic-notebook.mjs ADDRESS-OF-THE-NOTEBOOK CHROMIUM FOLDER-FOR-PICTURES
//
// The browser knows no host but 127.0.0.1. What it found is printed as one line of JSON; BrowserTests checks it.
import { chromium } from 'playwright-core';
import { measure } from './picture.mjs';

const [address, executablePath, folder] = process.argv.slice(2);
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1'] });
const found = { outside: [], library: 0 };
try {
  const page = await browser.newPage({ viewport: { width: 1200, height: 1000 } });
  page.on('request', request => {
    const url = new URL(request.url());
    if (url.protocol.startsWith('http') && url.hostname !== '127.0.0.1') found.outside.push(request.url());
    if (url.pathname.endsWith('/plotly.min.js')) found.library++;
  });
  page.setDefaultTimeout(120_000);
  await page.goto(address);
  await page.waitForFunction(() => window.Jupyter?.notebook?.kernel?.is_connected() && window.Jupyter.notebook._fully_loaded);
  found.kernel = await page.evaluate(() => Jupyter.notebook.kernel.name);

  // Run all.
  await page.evaluate(() => { Jupyter.notebook.clear_all_output(); Jupyter.notebook.execute_all_cells(); });
  await page.waitForFunction(() => {
    const cells = Jupyter.notebook.get_cells().filter(c => c.cell_type === 'code');
    return cells.every(c => typeof c.input_prompt_number === 'number') && !Jupyter.notebook.kernel_busy;
  });
  found.codeCells = await page.evaluate(() => Jupyter.notebook.get_cells().filter(c => c.cell_type === 'code').length);
  found.errors = await page.locator('.output_error').allInnerTexts();
  found.figures = await page.locator('.split-batch-chart').count();
  await page.waitForFunction(count => document.querySelectorAll('.split-batch-chart .js-plotly-plot').length === count, found.figures);
  found.charts = await page.locator('.split-batch-chart .js-plotly-plot').count();
  found.copies = await page.evaluate(() => [...document.scripts].filter(s => s.textContent.length > 1_000_000).length);

  // A picture of each chart: how much of it is drawn, and in how many colours.
  found.pictures = [];
  for (let i = 0; i < found.charts; i++) {
    const chart = page.locator('.split-batch-chart .js-plotly-plot').nth(i);
    await chart.scrollIntoViewIfNeeded();
    await page.waitForTimeout(300);
    const png = await chart.screenshot({ path: `${folder}/chart-${i + 1}.png` });
    found.pictures.push(await measure(page, png));
  }
  await page.locator('.split-batch-chart').first().scrollIntoViewIfNeeded();
  await page.screenshot({ path: `${folder}/notebook.png` });

  // Completion: a single match is filled in, of several a list is shown.
  const write = code => page.evaluate(text => {
    const cell = Jupyter.notebook.insert_cell_at_bottom('code');
    Jupyter.notebook.select(Jupyter.notebook.get_cells().length - 1);
    cell.set_text(text);
    Jupyter.notebook.edit_mode();
    cell.code_mirror.focus();
    cell.code_mirror.setCursor({ line: 0, ch: text.length });
    cell.element[0].scrollIntoView();
  }, code);
  const text = () => page.evaluate(() => Jupyter.notebook.get_cells().at(-1).get_text());
  await write('Gravity.FromSp');
  await page.keyboard.press('Tab');
  await page.waitForFunction(() => Jupyter.notebook.get_cells().at(-1).get_text() !== 'Gravity.FromSp');
  found.completed = await text();
  await write('trial.');
  await page.keyboard.press('Tab');
  await page.waitForSelector('.completions option');
  found.offered = await page.locator('.completions option').allInnerTexts();
  await page.screenshot({ path: `${folder}/completion.png` });
  await page.keyboard.press('Escape');

  // An endless loop, stopped by the button; what earlier cells made is still there.
  await write('while (true) { }');
  await page.keyboard.press('Shift+Enter');
  await page.waitForFunction(() => Jupyter.notebook.kernel_busy);
  await page.waitForTimeout(1000);
  found.busy = await page.evaluate(() => Jupyter.notebook.kernel_busy);
  await page.click('button[data-jupyter-action="jupyter-notebook:interrupt-kernel"]');
  await page.waitForSelector('.output_error');
  await page.waitForFunction(() => !Jupyter.notebook.kernel_busy);
  found.stopped = await page.locator('.output_error').last().innerText();
  await write('"still here: " + trialFolder.Length');
  await page.keyboard.press('Shift+Enter');
  await page.waitForFunction(() => [...document.querySelectorAll('.output_result')].at(-1)?.innerText.includes('still here'));
  found.after = await page.locator('.output_result').last().innerText();
  await page.screenshot({ path: `${folder}/interrupted.png` });
} catch (error) {
  found.failed = String(error);
} finally {
  await browser.close();
}
console.log(JSON.stringify(found));
