using System.Globalization;
using System.Text;

namespace SpecLint.Reports;

/// <summary>Writes one self-contained HTML page: no script, no font, no image and no address from anywhere else.</summary>
internal sealed class Html(TextWriter to)
{
    private const string Style = """
        :root{color-scheme:light dark;--paper:#fdfcf9;--ink:#1d2226;--soft:#545c63;--line:#c9c6bd;--band:#e9e6dc;
        --mark:#1f5f7a;--bad:#9c2a1d;--mid:#7a5600;--good:#2c6135}
        @media (prefers-color-scheme:dark){:root{--paper:#16191b;--ink:#eceae4;--soft:#b0b5b8;--line:#484d50;--band:#282d30;
        --mark:#8cc7e0;--bad:#ff9c8c;--mid:#f0c774;--good:#98d6a2}}
        *{box-sizing:border-box}
        body{margin:0 auto;padding:1rem;max-width:70rem;background:var(--paper);color:var(--ink);
        font:1rem/1.5 system-ui,sans-serif;overflow-wrap:anywhere}
        h1{font-size:1.6rem;margin:.2rem 0}h2{font-size:1.25rem;margin:2rem 0 .5rem;border-bottom:2px solid var(--line)}
        h3{font-size:1.05rem;margin:1.2rem 0 .3rem}
        a{color:var(--mark)}p{margin:.4rem 0}p,li,article,pre{max-width:52rem}
        svg{max-width:58rem}ul{margin:.3rem 0;padding-left:1.2rem}.soft{color:var(--soft)}
        .tag{display:inline-block;border:2px solid currentColor;border-radius:.3rem;padding:0 .4rem;
        font-weight:600;font-size:.85rem;white-space:nowrap}
        .bad{color:var(--bad)}.mid{color:var(--mid)}.good{color:var(--good)}
        article{border:1px solid var(--line);border-radius:.4rem;padding:.2rem .8rem .6rem;margin:.7rem 0;break-inside:avoid}
        pre{background:var(--band);padding:.5rem;overflow-x:auto;font:.85rem/1.4 ui-monospace,monospace;margin:.4rem 0;white-space:pre-wrap}
        mark{background:none;color:inherit;font-weight:700;text-decoration:underline;text-decoration-thickness:2px}
        :target{outline:3px solid var(--mark);outline-offset:2px}
        .figures td,.short{white-space:nowrap}.figures{font-size:.82rem}
        .wide{overflow-x:auto;margin:.5rem 0}table{border-collapse:collapse;font-size:.9rem}caption{text-align:left;font-weight:600;padding:.2rem 0}
        th,td{border:1px solid var(--line);padding:.2rem .5rem;text-align:left;vertical-align:top;overflow-wrap:normal}
        svg{display:block;width:100%;min-width:34rem;height:auto;color:var(--ink)}
        svg text{fill:currentColor;font:12px system-ui,sans-serif;
        paint-order:stroke;stroke:var(--paper);stroke-width:3px;stroke-linejoin:round}
        @media screen and (max-width:45rem){.stacks thead{position:absolute;clip-path:inset(50%)}
        .stacks tr,.stacks th,.stacks td{display:block;border:0}.stacks tr{border-top:1px solid var(--line);padding:.2rem 0}
        .stacks .nothing{display:none}.stacks td::before{content:attr(data-head) ": "}
        .stacks tr:not(:has(td:not(.nothing)))::after{content:"·";padding:0 .5rem}}
        details{margin:.3rem 0}summary{cursor:pointer}footer{margin-top:2rem;border-top:1px solid var(--line)}
        @media print{:root{color-scheme:light;--paper:#fff;--ink:#000;--soft:#333;--line:#888;--band:#eee;
        --mark:#000;--bad:#000;--mid:#000;--good:#000}
        body{max-width:none;padding:0;font-size:10pt}details::details-content{content-visibility:visible;display:block}
        h2,h3{break-after:avoid}.wide{overflow:visible}svg{min-width:0}}
        """;

    /// <summary>A cell of no more characters, such as a date or an amount, stays on one line.</summary>
    private const int ShortCell = 13;

    /// <summary>A cell that says nothing.</summary>
    public const string Nothing = "·";

    private int regions;

    /// <summary>
    /// A text of a recipe as text: what could steer a terminal, turn the direction of writing or hide shows as an escape, and
    /// every character that means something to HTML is written as a reference.
    /// </summary>
    public static string Text(string text)
    {
        string plain = DisplayText.Escape(JsonOutput.WellFormed(text));
        var encoded = new StringBuilder(plain.Length + 16);
        foreach (char c in plain)
        {
            switch (c)
            {
                case '&': encoded.Append("&amp;"); break;
                case '<': encoded.Append("&lt;"); break;
                case '>': encoded.Append("&gt;"); break;
                case '"': encoded.Append("&quot;"); break;
                case '\'': encoded.Append("&#39;"); break;
                default: encoded.Append(c); break;
            }
        }

        return encoded.ToString();
    }

    /// <summary>A name of an anchor: of an id only what is harmless in an address.</summary>
    public static string Anchor(string prefix, string id)
    {
        var name = new StringBuilder(prefix);
        foreach (char c in id)
        {
            if (c is (>= 'a' and <= 'z') or (>= '0' and <= '9') or '-') name.Append(c);
            else name.Append('_').Append(((int)c).ToString("x", CultureInfo.InvariantCulture));
        }

        return name.ToString();
    }

    /// <summary>The head of the page, down to its title.</summary>
    public void Begin(string title, string language = "en", string css = "")
    {
        Raw($"<!DOCTYPE html>\n<html lang=\"{language}\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
            + $"content=\"width=device-width, initial-scale=1\">\n");
        Raw("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n");
        Raw($"<title>{Text(title)}</title>\n<style>\n{Style}\n{css}</style>\n</head>\n<body>\n<main>\n<h1>{Text(title)}</h1>\n");
    }

    /// <summary>The end of the page.</summary>
    public void End(string caution, string version) =>
        Raw($"</main>\n<footer><p>{Text(caution)}</p><p class=\"soft\">SpecLint {Text(version)}</p></footer>\n</body>\n</html>\n");

    /// <summary>Markup as it is: never a text of a recipe.</summary>
    public void Raw(string markup) => to.Write(markup.Replace("\r\n", "\n"));

    /// <summary>A paragraph.</summary>
    public void Paragraph(string text, string css = "") => Raw(css.Length == 0 ? $"<p>{Text(text)}</p>\n" : $"<p class=\"{css}\">{Text(text)}</p>\n");

    /// <summary>A heading with an anchor.</summary>
    public void Heading(int level, string text, string anchor = "") =>
        Raw(anchor.Length == 0 ? $"<h{level}>{Text(text)}</h{level}>\n" : $"<h{level} id=\"{anchor}\">{Text(text)}</h{level}>\n");

    /// <summary>A list.</summary>
    public void List(IReadOnlyList<string> texts)
    {
        if (texts.Count == 0) return;
        Raw("<ul>\n");
        foreach (string text in texts) Raw($"<li>{Text(text)}</li>\n");
        Raw("</ul>\n");
    }

    /// <summary>A table; the first cell of a row heads it.</summary>
    /// <param name="caption">Its caption.</param>
    /// <param name="heads">Heads of the columns.</param>
    /// <param name="rows">Rows.</param>
    /// <param name="figures">Whether the cells are figures, whose words stay on one line.</param>
    /// <param name="stacks">Whether on a narrow screen each row stands as a block with what it says, so that no column is out of sight.</param>
    public void Table(
        string caption, IReadOnlyList<string> heads, IReadOnlyList<IReadOnlyList<string>> rows, bool figures = false, bool stacks = false)
    {
        BeginWide(caption);
        Raw($"<table{(figures ? " class=\"figures\"" : stacks ? " class=\"stacks\"" : "")}><caption>{Text(caption)}</caption>\n<thead><tr>");
        foreach (string head in heads) Raw($"<th scope=\"col\">{Text(head)}</th>");
        Raw("</tr></thead>\n<tbody>\n");
        foreach (var row in rows)
        {
            Raw("<tr>");
            for (int i = 0; i < row.Count; i++)
            {
                string head = stacks
                    ? $" data-head=\"{Text(heads[i])}\""
                    : "", kind = stacks && row[i] == Nothing ? " class=\"nothing\"" : row[i].Length <= ShortCell ? " class=\"short\"" : "";
                Raw(i == 0 ? $"<th scope=\"row\">{Text(row[i])}</th>" : $"<td{kind}{head}>{Text(row[i])}</td>");
            }

            Raw("</tr>\n");
        }

        Raw("</tbody></table></div>\n");
    }

    /// <summary>Adds a table of drinks and their allergens, and what a dot in it says.</summary>
    /// <param name="caption">What it shows.</param>
    /// <param name="allergens">The allergens, a column each.</param>
    /// <param name="drinks">The drinks, a row each.</param>
    public void Allergens(string caption, IReadOnlyList<string> allergens, IReadOnlyList<AllergenRow> drinks)
    {
        Table(
            caption,
            ["drink", .. allergens, "not known of"],
            [.. drinks.Select(d => (IReadOnlyList<string>)[
                d.Name, .. allergens.Select(d.Says), d.NotKnownOf.Count == 0 ? Nothing : Say.List(d.NotKnownOf)])],
            stacks: true);
        Paragraph("A dot says that none is known of, no more than that. Ask each guest, and the supplier where something is not known.", "soft");
    }

    /// <summary>Begins what may be wider than the screen: it scrolls by itself, by keyboard too.</summary>
    public void BeginWide(string label) => Raw($"<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\"{Text(label)} {++regions}\">");
}

/// <summary>What is known of the allergens of a drink.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Contains">Allergens that it contains.</param>
/// <param name="MayContain">Allergens that it may contain.</param>
/// <param name="NotKnownOf">Items whose allergens are not known.</param>
internal sealed record AllergenRow(string Name, IReadOnlyList<string> Contains, IReadOnlyList<string> MayContain, IReadOnlyList<string> NotKnownOf)
{
    /// <summary>What its cell for an allergen says.</summary>
    public string Says(string allergen) =>
        Contains.Contains(allergen) ? "● contains"
        : MayContain.Contains(allergen) ? "○ may contain"
        : NotKnownOf.Count > 0 ? "? not known" : Html.Nothing;
}
