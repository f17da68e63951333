// JupyterLab's application, out of the extensions that package.json lists.
import { JupyterLab } from '@jupyterlab/application';
import extensions from 'lab:extensions';

// Left out: language servers and consoles, whose packages are not here, and the news, which ask for the network.
const without = /:language-server|:consoles$|:files$|:announcements$/;

window.addEventListener('load', async () => {
  const lab = new JupyterLab();
  lab.registerPlugins(extensions.flat().filter(plugin => !without.test(plugin.id)));
  await lab.start();
  await lab.restored;
  window.jupyterapp = lab;
});
