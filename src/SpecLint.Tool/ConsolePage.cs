using System.Text;

namespace SpecLint.Tool;

/// <summary>
/// The code page of a console of Windows: what the tool writes is UTF-8, and a console with another page shows a degree sign as two
/// letters. It is set for the run and set back after it. Files and pipes get the same bytes without it.
/// </summary>
internal static class ConsolePage
{
    /// <summary>Sets the console to UTF-8.</summary>
    /// <param name="isWindows">Whether the system is Windows; no other has code pages.</param>
    /// <param name="isTerminal">Whether standard output is a console.</param>
    /// <param name="current">The page that is set.</param>
    /// <param name="set">Sets another.</param>
    /// <returns>Sets it back; <see langword="null"/> where nothing was changed.</returns>
    public static IDisposable? UseUtf8(bool isWindows, bool isTerminal, Func<Encoding> current, Action<Encoding> set)
    {
        if (!isWindows || !isTerminal) return null;
        try
        {
            var before = current();
            if (before.CodePage == Encoding.UTF8.CodePage) return null;
            set(new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
            return new Back(before, set);
        }
        catch (Exception e) when (IoFault.Is(e))
        {
            // A console that cannot be set shows what it can.
            return null;
        }
    }

    private sealed class Back(Encoding before, Action<Encoding> set) : IDisposable
    {
        public void Dispose()
        {
            try
            {
                set(before);
            }
            catch (Exception e) when (IoFault.Is(e))
            {
                // The console is gone.
            }
        }
    }
}
