namespace SpecLint.Fuzz;

/// <summary>A part of the program that takes text from outside.</summary>
/// <param name="Name">What the command line calls it.</param>
/// <param name="Run">Hands it an input; what it throws is a crash.</param>
/// <param name="Seeds">Inputs to begin with.</param>
/// <param name="Longest">Bytes of the longest input that is made.</param>
internal sealed record Target(string Name, Action<byte[]> Run, Func<IEnumerable<byte[]>> Seeds, int Longest = 1024);
