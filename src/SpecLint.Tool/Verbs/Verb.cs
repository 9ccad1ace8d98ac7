using System.CommandLine;

namespace SpecLint.Tool.Verbs;

/// <summary>A verb of the command line.</summary>
internal abstract class Verb
{
    /// <summary>Its name.</summary>
    public abstract string Name { get; }

    /// <summary>What it does, in one sentence.</summary>
    public abstract string Description { get; }

    /// <summary>Commands that show its use; the help prints them.</summary>
    public abstract IReadOnlyList<string> Examples { get; }

    /// <summary>Adds its arguments and options.</summary>
    public abstract void Define(Command command);

    /// <summary>Does it.</summary>
    /// <returns>The exit status.</returns>
    /// <exception cref="UsageException">Wrong usage or input that cannot be read.</exception>
    public abstract int Run(ParseResult parsed, Host host);
}
