"""Serves the JupyterLab that build.mjs made, with Debian's jupyterlab_server.

python3 serve.py BUILT-FOLDER [options of jupyter-server]
"""

import json
import os
import sys

from jupyterlab_server import LabServerApp

HERE = os.path.dirname(os.path.abspath(__file__))
BUILT = os.path.abspath(sys.argv.pop(1))
with open(os.path.join(HERE, "node_modules", "@jupyterlab", "application", "package.json"), encoding="utf-8") as file:
    VERSION = json.load(file)["version"]


class Lab(LabServerApp):
    """The built folder, and beside it what a person chooses while the server runs."""

    name = __name__
    app_name = "JupyterLab"
    app_version = VERSION
    app_url = "/lab"
    load_other_extensions = False
    static_dir = BUILT
    templates_dir = os.path.join(HERE, "page")
    schemas_dir = os.path.join(BUILT, "schemas")
    themes_dir = os.path.join(BUILT, "themes")
    app_settings_dir = os.path.join(BUILT, "chosen", "application")
    user_settings_dir = os.path.join(BUILT, "chosen", "settings")
    workspaces_dir = os.path.join(BUILT, "chosen", "workspaces")


def _jupyter_server_extension_points():
    return [{"module": __name__, "app": Lab}]


Lab.launch_instance()
