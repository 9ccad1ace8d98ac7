using System.Globalization;
using System.Text;

namespace SpecLint.Fuzz;

/// <summary>Makes new inputs of old ones: bits, bytes, numbers, blocks, words of the seeds, halves of two inputs.</summary>
internal sealed class Mutator
{
    private const string Signs = "{}[],:\"\\/*0-e. \n\0\t%";

    private static readonly byte[][] Numbers = [.. new[] { "0", "-1", "1e308", "1e-320", "0.0000001", "99999999999999999999", "1/0", "½", "–", "%", "°C" }.Select(Encoding.UTF8.GetBytes)];

    private readonly Random random;
    private readonly int longest;
    private readonly byte[][] words;

    /// <summary>Makes a mutator.</summary>
    /// <param name="random">Where the choices come from.</param>
    /// <param name="longest">Bytes of the longest input.</param>
    /// <param name="seeds">Inputs whose words are used.</param>
    public Mutator(Random random, int longest, IEnumerable<byte[]> seeds)
    {
        this.random = random;
        this.longest = longest;
        words = [.. Numbers, .. seeds.SelectMany(WordsOf).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(Encoding.Latin1.GetBytes)];
    }

    /// <summary>A new input.</summary>
    public byte[] Of(byte[] input, byte[] other)
    {
        var bytes = new List<byte>(input);
        for (int steps = 1 << random.Next(5); steps > 0; steps--) Step(bytes, other);
        if (bytes.Count > longest) bytes.RemoveRange(longest, bytes.Count - longest);
        return [.. bytes];
    }

    private void Step(List<byte> bytes, byte[] other)
    {
        int at = random.Next(bytes.Count + 1);
        bool isIn = at < bytes.Count;
        switch (random.Next(11))
        {
            case 0 when isIn: bytes[at] ^= (byte)(1 << random.Next(8)); break;
            case 1 when isIn: bytes[at] = (byte)random.Next(256); break;
            case 2 when isIn: bytes[at] = (byte)(bytes[at] + random.Next(-8, 9)); break;
            case 3: bytes.Insert(at, (byte)Signs[random.Next(Signs.Length)]); break;
            case 4 when isIn: bytes.RemoveRange(at, Math.Min(1 << random.Next(7), bytes.Count - at)); break;
            case 5 when isIn:
                var copied = bytes.GetRange(at, Math.Min(1 << random.Next(7), bytes.Count - at));
                bytes.InsertRange(random.Next(bytes.Count + 1), copied);
                break;
            case 6 or 7: bytes.InsertRange(at, words[random.Next(words.Length)]); break;
            case 8 when isIn:
                byte[] word = words[random.Next(words.Length)];
                bytes.RemoveRange(at, Math.Min(word.Length, bytes.Count - at));
                bytes.InsertRange(at, word);
                break;
            case 9 when other.Length > 0:
                bytes.RemoveRange(at, bytes.Count - at);
                bytes.AddRange(other.AsSpan(random.Next(other.Length)));
                break;
            case 10 when isIn
                && char.IsAsciiDigit((char)bytes[at]):
                bytes.InsertRange(
                    at, Encoding.ASCII.GetBytes(random.Next().ToString(CultureInfo.InvariantCulture))); break;
        }
    }

    private static IEnumerable<string> WordsOf(byte[] seed)
    {
        var word = new StringBuilder();
        foreach (byte b in seed)
        {
            if (char.IsAsciiLetterOrDigit((char)b) || b is (byte)'-' or (byte)'"' or >= 0x80)
            {
                word.Append((char)b);
                continue;
            }

            if (word.Length is > 1 and < 40) yield return word.ToString();
            word.Clear();
        }

        if (word.Length is > 1 and < 40) yield return word.ToString();
    }
}
