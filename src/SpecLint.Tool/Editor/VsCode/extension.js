// Starts the tool as a language server and shows the documents that its commands give back.
const vscode = require("vscode");
const { LanguageClient } = require("vscode-languageclient/node");

const pattern = "**/{bar.json,*.drink.json,*.prep.json,*.ingredient.json,*.menu.json,*.stock.json,*.prices.json}";
const commands = ["speclint.profile", "speclint.compare", "speclint.card"];
let client;

async function activate(context) {
  const settings = vscode.workspace.getConfiguration("speclint");
  const command = settings.get("command");
  client = new LanguageClient("speclint", "SpecLint", { command, args: ["editor"] }, {
    documentSelector: [{ scheme: "file", pattern }],
    initializationOptions: {
      wholeBook: settings.get("wholeBook"),
      inlayHints: settings.get("inlayHints"),
      rulePages: settings.get("rulePages"),
    },
    synchronize: { configurationSection: "speclint" },
    // The client registers the server's commands under their own names; what they give back is shown here.
    middleware: { executeCommand: run },
  });
  await client.start();
  context.subscriptions.push(client);
}

/** Runs a command on the recipe that is named, or on the one in the active editor, and opens what it gives back. */
async function run(command, args, next) {
  if (!commands.includes(command)) return next(command, args);
  const active = vscode.window.activeTextEditor;
  const target = args.length > 0 ? args : active ? [active.document.uri.toString()] : [];
  const shown = await next(command, target);
  if (!shown) return undefined;
  const document = await vscode.workspace.openTextDocument({ language: shown.language, content: shown.text });
  return vscode.window.showTextDocument(document, { viewColumn: vscode.ViewColumn.Beside, preview: true });
}

function deactivate() {
  return client ? client.stop() : undefined;
}

module.exports = { activate, deactivate };
