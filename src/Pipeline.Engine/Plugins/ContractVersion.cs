using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using Pipeline.Abstractions;

namespace Pipeline.Engine;

/// <summary>
/// The version of the contract between program and plugins: the assembly version of Pipeline.Abstractions. Every plugin carries
/// the one it was built against in its references. The first number changes when something is taken away or altered, the
/// second when something is added; so a plugin fits if the first number is the program's and the second is not greater.
/// </summary>
public static class ContractVersion
{
    private static readonly AssemblyName Contract = typeof(Verb).Assembly.GetName();

    /// <summary>This program's.</summary>
    public static Version OfProgram => Contract.Version ?? new Version(0, 0);

    /// <summary>True if a plugin built against a version works with this program.</summary>
    public static bool Fits(Version plugin)
    {
        ArgumentNullException.ThrowIfNull(plugin);
        return plugin.Major == OfProgram.Major && plugin.Minor <= OfProgram.Minor;
    }

    /// <summary>The version a plugin's file was built against, read without loading it; null if it does not use the contract.</summary>
    /// <exception cref="BadImageFormatException">The file is not a .NET assembly.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    internal static Version? BuiltAgainst(string file)
    {
        using var stream = File.OpenRead(file);
        using var image = new PEReader(stream);
        if (!image.HasMetadata)
            throw new BadImageFormatException("it holds no .NET code");
        var metadata = image.GetMetadataReader();
        foreach (var handle in metadata.AssemblyReferences)
        {
            var reference = metadata.GetAssemblyReference(handle);
            if (metadata.GetString(reference.Name) == Contract.Name)
                return reference.Version;
        }

        return null;
    }
}
