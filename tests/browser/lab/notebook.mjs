// Opens a notebook in JupyterLab, as a person would: runs it, looks at the charts on light and dark ground, asks for completion
// and help, makes a mistake, stops an endless loop, and opens a colleague's copy, which is not trusted, without running it.
//
//     node notebook.mjs ADDRESS-OF-JUPYTERLAB PATH-OF-THE-NOTEBOOK CHROMIUM FOLDER-FOR-PICTURES
//
// The browser knows no host but 127.0.0.1. What it found is printed as one line of JSON; LabTests checks it.
import { chromium } from 'playwright-core';
import { measure } from '../picture.mjs';

const [address, path, executablePath, folder] = process.argv.slice(2);
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1'] });
const found = { outside: [], library: 0, faults: [] };
try {
  const page = await browser.newPage({ viewport: { width: 1300, height: 1000 } });
  page.on('request', request => {
    const url = new URL(request.url());
    if (url.protocol.startsWith('http') && url.hostname !== '127.0.0.1') found.outside.push(request.url());
    if (url.pathname.endsWith('/plotly.min.js')) found.library++;
  });
  page.on('pageerror', error => found.faults.push(String(error)));
  page.setDefaultTimeout(120_000);
  const command = (name, args) => page.evaluate(([name, args]) => jupyterapp.commands.execute(name, args).then(() => {}), [name, args]);
  const shown = '.jp-NotebookPanel:not(.lm-mod-hidden)';
  const outputs = page.locator(`${shown} .jp-OutputArea-output`);

  await page.goto(`${address}/tree/${path}`);
  await page.waitForFunction(() => window.jupyterapp?.shell.currentWidget?.sessionContext?.session?.kernel?.connectionStatus === 'connected');
  found.version = await page.evaluate(() => jupyterapp.version);
  found.kernel = await page.evaluate(() => jupyterapp.shell.currentWidget.sessionContext.session.kernel.name);

  // Run all.
  await command('notebook:run-all-cells');
  found.unrun = await page.evaluate(() => jupyterapp.shell.currentWidget.content.widgets.filter(c => c.model.type === 'code' && !c.model.executionCount).length);
  found.errors = await page.locator(`${shown} [data-mime-type="application/vnd.jupyter.stderr"]`).allInnerTexts();
  found.figures = await page.evaluate(() => jupyterapp.shell.currentWidget.content.widgets.flatMap(c => c.model.outputs?.toJSON() ?? [])
    .filter(o => o.data?.['application/vnd.plotly.v1+json'] && String(o.data['text/html']).includes('split-batch-chart')).length);
  await page.waitForFunction(count => document.querySelectorAll('.split-batch-chart .js-plotly-plot').length === count, found.figures);
  found.pictures = await pictures(`${shown} .split-batch-chart .js-plotly-plot`, 'lab-chart');
  await page.screenshot({ path: `${folder}/lab.png` });

  // Dark ground: what is the faintest of all words put out?
  found.light = await faintest();
  await command('apputils:change-theme', { theme: 'JupyterLab Dark' });
  await page.waitForFunction(() => document.body.dataset.jpThemeLight === 'false');
  await page.locator(`${shown} details summary`).last().click();
  await page.waitForTimeout(500);
  found.dark = await faintest();
  await page.locator(`${shown} details`).last().scrollIntoViewIfNeeded();
  await page.screenshot({ path: `${folder}/lab-dark.png` });
  await command('apputils:change-theme', { theme: 'JupyterLab Light' });

  // Completion: a list is shown, and Enter takes the first of it. Help: what stands in the library's documentation.
  const offer = '.jp-Completer:not(.lm-mod-hidden) .jp-Completer-match';
  const source = () => page.evaluate(() => jupyterapp.shell.currentWidget.content.activeCell.model.sharedModel.getSource());
  const write = async code => {
    await page.evaluate(() => { const { content } = jupyterapp.shell.currentWidget; content.activeCellIndex = content.widgets.length - 1; });
    await command('notebook:insert-cell-below');
    await command('notebook:change-cell-to-code');
    await command('notebook:enter-edit-mode');
    await page.waitForFunction(() => document.activeElement?.matches('.cm-content') && jupyterapp.shell.currentWidget.content.activeCell.node.contains(document.activeElement));
    await page.keyboard.insertText(code);
    await page.waitForFunction(code => jupyterapp.shell.currentWidget.content.activeCell.model.sharedModel.getSource() === code, code);
  };
  const complete = async isKernels => {
    for (let asked = 0; asked < 15; asked++) {
      await page.waitForFunction(() => document.activeElement.closest('.jp-mod-completer-enabled'));
      await page.keyboard.press('Tab');
      await page.waitForSelector(offer, { timeout: 3000 }).catch(() => {});
      const offered = await page.locator(offer).allInnerTexts();
      if (offered.some(isKernels)) return offered;
      await page.keyboard.press('Escape'); // JupyterLab gives the kernel one second; after that it offers words of the page, or nothing.
      await command('notebook:enter-edit-mode');
    }
  };
  await write('Gravity.FromSp');
  await complete(offer => offer === 'FromSpecific');
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => jupyterapp.shell.currentWidget.content.activeCell.model.sharedModel.getSource() !== 'Gravity.FromSp');
  found.completed = await source();
  await write('trial.');
  found.offered = await complete(offer => offer === 'Verdict');
  await page.screenshot({ path: `${folder}/lab-completion.png` });
  await page.keyboard.press('Escape');
  await write('AlphaAcid.FromPercent(');
  await page.keyboard.press('Shift+Tab');
  found.help = await page.locator('.jp-Tooltip').innerText();
  await page.screenshot({ path: `${folder}/lab-help.png` });
  await page.keyboard.press('Escape');

  // A mistake, and an endless loop stopped by the button; what earlier cells made is still there.
  await write('trial.Panel("nobody")');
  await command('notebook:run-cell');
  found.mistake = await outputs.last().innerText();
  await page.screenshot({ path: `${folder}/lab-mistake.png` });
  await write('while (true) { }');
  await page.keyboard.press('Shift+Enter');
  await page.waitForFunction(() => jupyterapp.shell.currentWidget.sessionContext.session.kernel.status === 'busy');
  await page.waitForTimeout(1000);
  found.busy = await page.evaluate(() => jupyterapp.shell.currentWidget.sessionContext.session.kernel.status === 'busy');
  await page.click(`${shown} [data-jp-item-name="interrupt"]`);
  await page.waitForFunction(() => jupyterapp.shell.currentWidget.sessionContext.session.kernel.status === 'idle');
  await page.waitForFunction(([selector]) => [...document.querySelectorAll(selector)].at(-1).innerText.includes('interrupted'), [`${shown} .jp-OutputArea-output`]);
  found.stopped = await outputs.last().innerText();
  await write('"still here: " + trialFolder.Length');
  await command('notebook:run-cell');
  found.after = await outputs.last().innerText();

  // The notebook is saved. A colleague's copy has other words, so that this person's signature is not on it.
  await command('docmanager:save');
  const copy = await page.evaluate(async path => {
    const { contents } = jupyterapp.serviceManager;
    const { content } = await contents.get(path);
    for (const cell of content.cells) delete cell.metadata.trusted;
    content.cells[0].source = '# A copy from a colleague';
    const copy = path.replace('.ipynb', '-copy.ipynb');
    await contents.save(copy, { type: 'notebook', format: 'json', content });
    return copy;
  }, path);
  await command('docmanager:open', { path: copy });
  await page.waitForFunction(count => document.querySelectorAll('.jp-NotebookPanel:not(.lm-mod-hidden) .split-batch-chart').length === count, found.figures);
  await page.waitForTimeout(500);
  found.trusted = await page.evaluate(() => jupyterapp.shell.currentWidget.content.widgets.filter(c => c.model.type === 'code' && c.model.trusted).length);
  found.scripts = await page.locator(`${shown} .js-plotly-plot`).count();
  found.stills = await pictures(`${shown} .split-batch-chart img:visible`, 'lab-still');
  found.loose = await page.locator(`${shown} .split-batch-page`).allInnerTexts();
  await page.screenshot({ path: `${folder}/lab-copy.png` });

  async function pictures(selector, name) {
    const all = [];
    for (const [i, chart] of (await page.locator(selector).all()).entries()) {
      await chart.scrollIntoViewIfNeeded();
      await page.waitForTimeout(200);
      all.push(await measure(page, await chart.screenshot({ path: `${folder}/${name}-${i + 1}.png` })));
    }
    return all;
  }

  // The least contrast between words and their ground, as the accessibility guidelines count it.
  function faintest() {
    return page.evaluate(() => {
      const channels = colour => colour.match(/[\d.]+/g).map(Number);
      const light = ([r, g, b]) => [r, g, b].map(c => c / 255).map(c => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)).reduce((sum, c, i) => sum + c * [0.2126, 0.7152, 0.0722][i], 0);
      const over = (top, share, below) => top.map((c, i) => c * share + below[i] * (1 - share));
      let least = { contrast: 21, words: '' };
      for (const output of document.querySelectorAll('.jp-NotebookPanel:not(.lm-mod-hidden) .jp-OutputArea-output')) {
        const walker = document.createTreeWalker(output, NodeFilter.SHOW_TEXT);
        while (walker.nextNode()) {
          const words = walker.currentNode.textContent.trim(), element = walker.currentNode.parentElement;
          if (!words || element.closest('svg, style, script') || !element.checkVisibility()) continue;
          let ground = null, opacity = 1;
          for (let e = element; e && !ground; e = e.parentElement) {
            opacity *= getComputedStyle(e).opacity;
            const [r, g, b, a = 1] = channels(getComputedStyle(e).backgroundColor);
            if (a > 0.5) ground = [r, g, b];
          }
          ground ??= [255, 255, 255];
          const [r, g, b] = channels(getComputedStyle(element).color);
          const [dark, bright] = [light(over([r, g, b], opacity, ground)), light(ground)].sort((x, y) => x - y);
          const contrast = (bright + 0.05) / (dark + 0.05);
          if (contrast < least.contrast) least = { contrast, words };
        }
      }
      return least;
    });
  }
} catch (error) {
  found.failed = String(error);
  await browser.contexts()[0]?.pages()[0]?.screenshot({ path: `${folder}/lab-failed.png` });
} finally {
  await browser.close();
}
console.log(JSON.stringify(found));
