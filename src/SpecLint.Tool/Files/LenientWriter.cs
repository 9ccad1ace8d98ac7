using System.Text;

namespace SpecLint.Tool;

/// <summary>Standard error: where it is closed or full there is nobody left to tell, and the run goes on.</summary>
internal sealed class LenientWriter(TextWriter inner) : TextWriter
{
    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value) => Try(() => inner.Write(value));

    public override void Write(string? value) => Try(() => inner.Write(value));

    public override void WriteLine(string? value) => Try(() => inner.WriteLine(value));

    public override void Write(char[] buffer, int index, int count) => Try(() => inner.Write(buffer, index, count));

    public override void Flush() => Try(inner.Flush);

    private static void Try(Action write)
    {
        try
        {
            write();
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            // Said to nobody.
        }
    }
}
