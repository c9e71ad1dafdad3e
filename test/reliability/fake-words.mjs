// What a fake editor types, asks for, and says out of all order.

/** What people type, paste and delete, and what nobody should. */
export const PIECES = [
  "",
  "x",
  " ",
  "\n",
  "\r\n",
  "\t",
  '"',
  "#",
  ", ",
  "{",
  "}",
  "..",
  "±",
  "ä😀",
  "\u0000",
  "\u202e",
  "\ud800",
  "  removed: front.left.disc\n",
  "  measured: disc thickness 8.1 mm\n",
  'part front.left.hub "Another"\n',
  "day 2026-10-02\n",
  'vehicle "Second"\n',
  "assembly front.left like front.right\n",
  "  calc: rest = rest + 1\n",
  "  photo: ../../outside.jpg\n",
  "  torqued: front.bolts 24 N.m\n",
  'hold roll "Rolling"\n',
  "  price: 12.50 GBP\n",
];

export const AT_PLACE = [
  "hover",
  "completion",
  "signatureHelp",
  "definition",
  "references",
  "documentHighlight",
  "prepareRename",
  "prepareCallHierarchy",
].map((name) => `textDocument/${name}`);

export const OF_FILE = [
  "documentSymbol",
  "foldingRange",
  "semanticTokens/full",
  "codeLens",
  "documentLink",
  "diagnostic",
].map((name) => `textDocument/${name}`);

export const VIEWS = [
  "cotter/overview",
  "cotter/branch",
  "cotter/stillOpen",
  "cotter/toOrder",
  "cotter/report",
];

/** Bodies that are no messages, and messages that make no sense. */
export const MALFORMED = [
  "{",
  "",
  "null",
  "[]",
  '"text"',
  "{}",
  '{"jsonrpc":"2.0"}',
  '{"jsonrpc":"2.0","method":"textDocument/didChange"}',
  '{"jsonrpc":"2.0","method":"textDocument/didChange","params":{}}',
  '{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{}}}',
  '{"jsonrpc":"2.0","method":"workspace/didChangeWatchedFiles","params":{"changes":[{}]}}',
  '{"jsonrpc":"2.0","method":"no/such","params":[1,2]}',
  '{"jsonrpc":"2.0","id":"odd","method":"no/such"}',
  '{"jsonrpc":"2.0","id":"odd","method":"textDocument/hover","params":{}}',
  '{"jsonrpc":"2.0","id":"odd","method":"textDocument/hover","params":null}',
  '{"jsonrpc":"2.0","id":999999,"result":{}}',
  '{"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":424242}}',
];
