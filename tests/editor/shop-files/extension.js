// A file system in memory for the tests: the folder shop:/job, with what a job and its rack hold.
const vscode = require("vscode");

const RACK = `sheet ply-12 { called 1/2  measures 15/32  size 48 x 96 }
slides runner { mount side  lengths 10 to 28 by 2  clearance 1/2  above 1/4  below 1/4  behind 1/2 }
`;
const JOB = `project "Drawer far from any disk"
inches
use "rack.scant"
opening upper { wide 15 1/2  high 6  deep 22 }
box for upper {
  sides ply-12  bottom ply-12 under
  corners screws  slides runner 30
}
`;

exports.activate = (context) => {
  const files = new Map([
    ["/job/job.scant", new TextEncoder().encode(JOB)],
    ["/job/rack.scant", new TextEncoder().encode(RACK)],
  ]);
  const changed = new vscode.EventEmitter();
  const read = (uri) => {
    const bytes = files.get(uri.path);
    if (bytes === undefined) throw vscode.FileSystemError.FileNotFound(uri);
    return bytes;
  };
  const provider = {
    onDidChangeFile: changed.event,
    watch: () => new vscode.Disposable(() => undefined),
    stat: (uri) => {
      const isFolder = uri.path === "/" || uri.path === "/job";
      return isFolder
        ? { type: vscode.FileType.Directory, ctime: 0, mtime: 0, size: 0 }
        : { type: vscode.FileType.File, ctime: 0, mtime: 0, size: read(uri).byteLength };
    },
    readDirectory: (uri) =>
      uri.path === "/job"
        ? [...files.keys()].map((path) => [path.slice("/job/".length), vscode.FileType.File])
        : [["job", vscode.FileType.Directory]],
    createDirectory: () => undefined,
    readFile: read,
    writeFile: (uri, bytes) => {
      const type = files.has(uri.path) ? vscode.FileChangeType.Changed : vscode.FileChangeType.Created;
      files.set(uri.path, bytes);
      changed.fire([{ type, uri }]);
    },
    delete: (uri) => {
      files.delete(uri.path);
      changed.fire([{ type: vscode.FileChangeType.Deleted, uri }]);
    },
    rename: (from, to) => {
      files.set(to.path, read(from));
      files.delete(from.path);
      changed.fire([
        { type: vscode.FileChangeType.Deleted, uri: from },
        { type: vscode.FileChangeType.Created, uri: to },
      ]);
    },
  };
  context.subscriptions.push(vscode.workspace.registerFileSystemProvider("shop", provider, { isCaseSensitive: true }));
};
