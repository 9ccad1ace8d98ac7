using System.Diagnostics;
using SpecLint.Tool.Tests.Support;

namespace SpecLint.Tool.Tests.Editor;

/// <summary>
/// The server in a real editor: Neovim without a screen (<c>apt-get install neovim</c>; 0.7 or later), driven by a script that
/// prints what the editor knows after each step.
/// </summary>
public sealed class NeovimTests
{
    private const string Script = """
        local out, done = {}, false
        local function say(line) table.insert(out, line) end
        local function call(buffer, method, params)
          local answers = vim.lsp.buf_request_sync(buffer, method, params, 20000)
          for _, answer in pairs(answers or {}) do
            if answer.error then say(method .. " error " .. answer.error.message) end
            return answer.result
          end
        end
        local function place(buffer, word)
          for number, line in ipairs(vim.api.nvim_buf_get_lines(buffer, 0, -1, false)) do
            local at = line:find(word, 1, true)
            if at then return { line = number - 1, character = at } end
          end
        end
        local function params(buffer, word, more)
          local position = place(buffer, word)
          return vim.tbl_extend("force", { textDocument = { uri = vim.uri_from_bufnr(buffer) }, position = position, range = { start = position, ["end"] = position } }, more or {})
        end
        local function codes(buffer)
          local list = {}
          for _, d in ipairs(vim.diagnostic.get(buffer)) do
            local code = d.code or (d.user_data and d.user_data.lsp and d.user_data.lsp.code) or "?"
            table.insert(list, code)
          end
          table.sort(list)
          return table.concat(list, " ")
        end

        local capabilities = vim.lsp.protocol.make_client_capabilities()
        local client = vim.lsp.start_client({ name = "speclint", cmd = vim.json.decode(vim.env.SPECLINT_COMMAND), root_dir = vim.env.SPECLINT_BOOK, capabilities = capabilities, init_options = { wholeBook = true } })
        vim.cmd("edit " .. vim.env.SPECLINT_BOOK .. "/mudflat.drink.json")
        local buffer = vim.api.nvim_get_current_buf()
        vim.lsp.buf_attach_client(buffer, client)
        vim.wait(20000, function() return #vim.diagnostic.get(buffer) > 0 end, 50)
        say("diagnostics " .. codes(buffer))

        local hover = call(buffer, "textDocument/hover", params(buffer, '"gin"'))
        say("hover " .. hover.contents.kind .. " " .. vim.split(hover.contents.value, "\n")[1])

        local offered = call(buffer, "textDocument/completion", params(buffer, '"tide-cordial"'))
        local labels = {}
        for _, item in ipairs(offered.items) do table.insert(labels, item.label) end
        say("completion " .. tostring(vim.tbl_contains(labels, "tide-cordial")))

        local definition = call(buffer, "textDocument/definition", params(buffer, '"tide-cordial"'))
        say("definition " .. vim.fn.fnamemodify(vim.uri_to_fname(definition[1].uri), ":t"))

        local actions = call(buffer, "textDocument/codeAction", params(buffer, '"no-such-thing"', { context = { diagnostics = {} } }))
        for _, action in ipairs(actions) do
          if action.title:match("^Accept SL9001") then
            vim.lsp.util.apply_workspace_edit(action.edit, "utf-16")
            say("action " .. action.title)
          end
        end
        say("accepted " .. tostring(place(buffer, '"accept"') ~= nil))

        -- What is typed is sent as a range, and the finding goes.
        local position = place(buffer, "no-such-thing")
        vim.api.nvim_buf_set_text(buffer, position.line, position.character - 1, position.line, position.character - 1 + #"no-such-thing", { "lime-juice" })
        vim.wait(20000, function() return not codes(buffer):find("SL9001") end, 50)
        say("after typing " .. tostring(codes(buffer):find("SL9001") == nil))

        local edits = call(buffer, "textDocument/formatting", { textDocument = { uri = vim.uri_from_bufnr(buffer) }, options = { tabSize = 2, insertSpaces = true } })
        vim.lsp.util.apply_text_edits(edits, buffer, "utf-16")
        say("formatting " .. vim.api.nvim_buf_get_lines(buffer, 1, 2, false)[1])

        local renamed = call(buffer, "textDocument/rename", params(buffer, '"tide-glass"', { newName = "ebb-glass" }))
        vim.lsp.util.apply_workspace_edit(renamed, "utf-16")
        say("rename " .. tostring(place(buffer, '"ebb-glass"') ~= nil))
        vim.cmd("silent! wall")
        vim.fn.writefile(out, vim.env.SPECLINT_SAID)
        vim.cmd("qall!")
        """;

    [NeovimFact]
    public void Neovim_shows_and_does_all_of_it()
    {
        using var book = SmallBar.Make();
        book.Write(
            "mudflat.drink.json",
            SmallBar.Drink.Replace(
                "{ \"item\": \"lime-juice\", \"amount\": \"25 ml\" }", "{ \"item\": \"no-such-thing\",   \"amount\": \"25 ml\" }",
                StringComparison.Ordinal)
                .Replace("  \"name\"", "      \"name\"", StringComparison.Ordinal));
        using var desk = new TestFolder();
        desk.Write("script.lua", Script);
        var start = new ProcessStartInfo(
            "nvim", ["--headless", "-u", "NONE", "-i", "NONE", "-n", "-c", $"luafile {desk["script.lua"]}"])
        {
            UseShellExecute = false,
            RedirectStandardError = true,
            RedirectStandardOutput = true,
            WorkingDirectory = book.Path,
        };

        start.Environment["SPECLINT_BOOK"] = book.Path;
        start.Environment["SPECLINT_SAID"] = desk["said.txt"];
        start.Environment["SPECLINT_COMMAND"] = $"[\"dotnet\", {Desk.Quote(typeof(Shell).Assembly.Location)}, \"editor\"]";
        start.Environment["XDG_CACHE_HOME"] = desk["cache"];
        start.Environment["XDG_STATE_HOME"] = desk["state"];
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(TimeSpan.FromMinutes(3))) process.Kill(entireProcessTree: true);
        string[] said = File.Exists(desk["said.txt"]) ? File.ReadAllLines(desk["said.txt"]) : [];
        Assert.True(said.Length > 0, error.Result);
        Assert.Contains("SL9001", said[0], StringComparison.Ordinal);
        string all = string.Join('\n', said[1..]);
        Assert.Contains("hover markdown **Gin", all, StringComparison.Ordinal);
        Assert.Contains("completion true", all, StringComparison.Ordinal);
        Assert.Contains("definition tide-cordial.prep.json", all, StringComparison.Ordinal);
        Assert.Contains("action Accept SL9001 until", all, StringComparison.Ordinal);
        Assert.Contains("accepted true", all, StringComparison.Ordinal);
        Assert.Contains("after typing true", all, StringComparison.Ordinal);
        Assert.Contains("formatting   \"name\": \"Mudflat\",", all, StringComparison.Ordinal);
        Assert.Contains("rename true", all, StringComparison.Ordinal);
        Assert.Contains("ebb-glass", File.ReadAllText(book["bar.json"]), StringComparison.Ordinal);
    }

    /// <summary>A fact of the long run that needs Neovim.</summary>
    [AttributeUsage(AttributeTargets.Method)]
    private sealed class NeovimFactAttribute : LongFactAttribute
    {
        public NeovimFactAttribute()
        {
#pragma warning disable MA0056 // xUnit reads Skip of the attribute it finds; no attribute overrides it.
            if (LongRun.IsOn && !IsThere()) Skip = "Neovim is not installed.";
#pragma warning restore MA0056
        }

        private static bool IsThere()
        {
            try
            {
                using var process = Process.Start(new ProcessStartInfo("nvim", ["--version"]) { UseShellExecute = false, RedirectStandardOutput = true });
                process!.WaitForExit();
                return process.ExitCode == 0;
            }
            catch (System.ComponentModel.Win32Exception)
            {
                return false;
            }
        }
    }
}
