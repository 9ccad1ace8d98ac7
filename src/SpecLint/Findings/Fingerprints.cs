namespace SpecLint.Findings;

/// <summary>Fingerprints of findings.</summary>
internal static class Fingerprints
{
    /// <summary>Name of the fingerprint in SARIF; the version rises when the ingredients change.</summary>
    public const string Name = "specLint/v1";

    private const string Digits = "0123456789abcdef";

    /// <summary>128 bits (FNV-1a, two lanes) of rule id, subject, path and key, as 32 hexadecimal digits.</summary>
    public static string Of(Finding finding) => Of(finding.Rule.Id, finding.Subject, finding.Path, finding.Key);

    /// <summary>The same of what is no finding of a rule.</summary>
    internal static string Of(string rule, string subject, string path, string key)
    {
        ulong a = 14695981039346656037, b = 0x9E3779B97F4A7C15;
        Add(rule);
        Add(subject);
        Add(path);
        Add(key);
        Span<char> text = stackalloc char[32];
        for (int i = 0; i < 16; i++)
        {
            text[i] = Digits[(int)(a >> (60 - (4 * i))) & 15];
            text[i + 16] = Digits[(int)(b >> (60 - (4 * i))) & 15];
        }

        return text.ToString();

        void Add(string part)
        {
            foreach (char c in part)
            {
                a = (a ^ c) * 1099511628211;
                b = (b ^ ((ulong)c + 0x100)) * 1099511628211;
            }

            a = (a ^ 0xFFFF) * 1099511628211;
            b = (b ^ 0x1FFFF) * 1099511628211;
        }
    }
}
