"""JupyterLab as a stranger has it: of its own settings alone, on this machine alone."""

import json
import os
import secrets
import subprocess
import sys
import time
from contextlib import contextmanager

SETTINGS = {
    "notification": {"fetchNews": "false", "checkForUpdates": False},  # nothing from elsewhere
    "themes": {"adaptive-theme": True},  # light and dark as the browser asks
}
FOLDERS = ("JUPYTER_CONFIG_DIR", "JUPYTER_DATA_DIR", "JUPYTER_RUNTIME_DIR", "IPYTHONDIR")
PATIENCE = 60  # s, for a busy machine


@contextmanager
def lab(root, aside):
    """Shows the notebooks in `root`, keeps all it wants to write in `aside`; the address of a
    notebook, with a place for its name.
    """
    settings = aside / "settings/@jupyterlab/apputils-extension"
    settings.mkdir(parents=True)
    for name, said in SETTINGS.items():
        (settings / f"{name}.jupyterlab-settings").write_text(json.dumps(said), "utf-8")
    token = secrets.token_hex(16)
    own = {name: str(aside / name.lower()) for name in FOLDERS}
    own |= {"JUPYTERLAB_SETTINGS_DIR": str(aside / "settings"), "JUPYTER_TOKEN": token}
    command = ["-m", "jupyterlab", "--no-browser", "--ip=127.0.0.1", "--port=0", "--allow-root"]
    command += [f"--ServerApp.root_dir={root}", "--LabApp.extension_manager=readonly"]
    with open(aside / "lab.log", "w", encoding="utf-8") as log:
        server = subprocess.Popen(
            [sys.executable, *command], env=os.environ | own, stdout=log, stderr=log
        )
        try:
            at = _address(server, aside / "jupyter_runtime_dir", aside / "lab.log")
            yield f"{at}doc/tree/{{}}?token={token}"
        finally:
            server.terminate()
            server.wait(PATIENCE)


def _address(server, runtime, log):
    """Where it listens, once it does."""
    told, end = runtime / f"jpserver-{server.pid}.json", time.monotonic() + PATIENCE
    while time.monotonic() < end and server.poll() is None:
        try:
            return json.loads(told.read_text("utf-8"))["url"]
        except (FileNotFoundError, ValueError):
            time.sleep(0.1)
    raise AssertionError(f"JupyterLab does not listen:\n{log.read_text('utf-8')}")
