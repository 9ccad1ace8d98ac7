namespace SpecLint.Mutants;

/// <summary>A way in which a recipe goes wrong.</summary>
/// <param name="Number">Its number in the list of kinds.</param>
/// <param name="Name">What is done, in a few words.</param>
/// <param name="Rules">Ids of the rules of which one has to find it.</param>
/// <param name="Apply">Puts it into a draft at a random place; false where the draft has no such place.</param>
internal sealed record Defect(int Number, string Name, string[] Rules, Func<Draft, bool> Apply);

/// <summary>A kind that no reading of the files can find, and why.</summary>
internal sealed record Unseen(int Number, string Name, string Because);
