// Builds JupyterLab from its own packages, without a network:
//
//     node build.mjs FOLDER
import { build } from 'esbuild';
import { cpSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

const [outdir] = process.argv.slice(2);
const here = import.meta.dirname;
const require = createRequire(import.meta.url);
const read = file => JSON.parse(readFileSync(file));
const extensions = Object.keys(read(join(here, 'package.json')).dependencies)
  .filter(name => name.startsWith('@jupyterlab/'))
  .map(name => require.resolve(`${name}/package.json`))
  .map(file => ({ folder: dirname(file), ...read(file) }))
  .filter(e => e.jupyterlab?.extension);

const plugin = {
  name: 'lab',
  setup(build) {
    build.onResolve({ filter: /^lab:extensions$/ }, ({ path }) => ({ path, namespace: 'lab' }));
    build.onLoad({ filter: /.*/, namespace: 'lab' }, () => ({
      resolveDir: here,
      contents: extensions.map((e, i) => `${e.styleModule ? `import '${e.name}/${e.styleModule}';` : ''} import e${i} from '${e.name}';`).join('\n')
        + `\nexport default [${extensions.map((_, i) => `e${i}`)}];`,
    }));
    build.onResolve({ filter: /^~/ }, ({ path, ...options }) => build.resolve(path.slice(1), options));
    // A drawing is text for a script, and an address for a style sheet.
    build.onResolve({ filter: /\.svg$/ }, ({ path, kind, resolveDir }) => kind === 'url-token' ? { path: join(resolveDir, path), namespace: 'drawing' } : undefined);
    build.onLoad({ filter: /.*/, namespace: 'drawing' }, ({ path }) => ({ contents: readFileSync(path), loader: 'dataurl' }));
  },
};
const common = {
  bundle: true, logLevel: 'warning', plugins: [plugin], define: { 'process.env': '{}', global: 'window' },
  loader: { '.svg': 'text', '.raw.css': 'text', '.md': 'text', '.png': 'file', '.eot': 'file', '.ttf': 'file', '.woff': 'file', '.woff2': 'file' },
};
await build({ ...common, outdir, entryPoints: { lab: join(here, 'app.mjs') }, format: 'esm', splitting: true, external: ['mermaid', '@mermaid-js/*'] });
for (const { name, folder, jupyterlab } of extensions) {
  if (jupyterlab.schemaDir) cpSync(join(folder, jupyterlab.schemaDir), join(outdir, 'schemas', name), { recursive: true });
  if (jupyterlab.themePath) await build({ ...common, outdir: join(outdir, 'themes', name), entryPoints: { index: join(folder, jupyterlab.themePath) } });
}
