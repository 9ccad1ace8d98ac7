using System.Reflection;
using System.Runtime.Loader;

namespace SpecLint.Analyzers.Tests;

/// <summary>A program of ours as its host loads it: with the library that lies beside it, not with that of these tests.</summary>
internal sealed class OwnFolder : AssemblyLoadContext
{
    private readonly string folder;

    private OwnFolder(string folder)
        : base(folder) => this.folder = folder;

    /// <summary>A type of a project, from what its build put out.</summary>
    /// <param name="project">Name of the project and of its assembly.</param>
    /// <param name="type">Full name of the type.</param>
    public static Type Load(string project, string type)
    {
        var configuration = new DirectoryInfo(AppContext.BaseDirectory).Parent!;
        string folder = Path.Combine(Repository.At("src", project, "bin", configuration.Name), "netstandard2.0");
        return new OwnFolder(folder).LoadFromAssemblyPath(Path.Combine(folder, project + ".dll")).GetType(type, throwOnError: true)!;
    }

    /// <summary>Takes the assemblies of the folder before those of the process.</summary>
    protected override Assembly? Load(AssemblyName assemblyName) =>
        Path.Combine(folder, assemblyName.Name + ".dll") is var path && File.Exists(path) ? LoadFromAssemblyPath(path) : null;
}
