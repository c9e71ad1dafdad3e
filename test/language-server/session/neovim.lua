-- Drives the server from Neovim's own LSP client, as someone who writes a log in that editor would. Prints one JSON
-- object: what the editor got to see. Arguments by environment: COTTER_NODE, COTTER_PROGRAM, COTTER_FOLDER.
local seen = {}

local function wait(what, is_so)
  if not vim.wait(30000, is_so, 20) then error("it never came to that: " .. what) end
end

local folder = vim.env.COTTER_FOLDER
vim.cmd("edit " .. folder .. "/log.cotter")
local buffer = vim.api.nvim_get_current_buf()

local exited
local client_id = vim.lsp.start_client({
  name = "cotter",
  cmd = { vim.env.COTTER_NODE, vim.env.COTTER_PROGRAM, "serve", "--stdio" },
  root_dir = folder,
  workspace_folders = { { uri = vim.uri_from_fname(folder), name = "log" } },
  on_exit = function(code) exited = code end,
})
vim.lsp.buf_attach_client(buffer, client_id)

local function codes()
  local found = {}
  for _, diagnostic in ipairs(vim.diagnostic.get(buffer)) do
    table.insert(found, diagnostic.code or diagnostic.user_data.lsp.code)
  end
  table.sort(found)
  return found
end

local function ask(method, line, character, more)
  local params = vim.tbl_extend("force", {
    textDocument = vim.lsp.util.make_text_document_params(buffer),
    position = { line = line, character = character },
  }, more or {})
  local answers = vim.lsp.buf_request_sync(buffer, method, params, 30000)
  local answer = answers and answers[client_id] or {}
  local err = answer.err or answer.error -- by version
  if err then return { refused = err.message } end
  return answer.result
end

wait("diagnostics", function() return #codes() > 0 end)
seen.at_first = codes()

-- The misspelt word is put right by hand.
vim.api.nvim_buf_set_text(buffer, 6, 2, 6, 9, { "removed" })
wait("no diagnostics", function() return #codes() == 0 end)
seen.mended = codes()

seen.hover = ask("textDocument/hover", 6, 18).contents.value

seen.completion = {}
vim.api.nvim_buf_set_lines(buffer, 7, 7, false, { "  decided: front.disc " })
for _, item in ipairs(ask("textDocument/completion", 7, 22).items) do table.insert(seen.completion, item.label) end
vim.api.nvim_buf_set_text(buffer, 7, 22, 7, 22, { "renew" })

local edit = ask("textDocument/rename", 6, 18, { newName = "rotor" })
vim.lsp.util.apply_workspace_edit(edit, "utf-16")
seen.renamed = vim.api.nvim_buf_get_lines(buffer, 0, -1, false)
seen.refused = ask("textDocument/rename", 6, 18, { newName = "with" }).refused

vim.api.nvim_buf_set_lines(buffer, 7, 8, false, { "    decided:   front.rotor   renew" })
vim.lsp.util.apply_text_edits(
  ask("textDocument/formatting", 0, 0, { options = { tabSize = 2, insertSpaces = true } }),
  buffer,
  "utf-16"
)
seen.formatted = vim.api.nvim_buf_get_lines(buffer, 7, 8, false)[1]

vim.lsp.stop_client(client_id)
wait("the end of the server", function() return exited ~= nil end)
seen.exit = exited

io.stdout:write(vim.json and vim.json.encode(seen) or vim.fn.json_encode(seen), "\n")
