using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace Pipeline.Tests;

/// <summary>Plugins written as a few lines of C# in a test, compiled and laid out in a folder as a painter would have them.</summary>
public static class PluginSource
{
    private const string Usings = "using System; using System.Collections.Generic; using Pipeline.Abstractions; namespace Pipeline.Plugins.Tried;\n";

    /// <summary>A verb that works.</summary>
    public static string Verb(string name, string className = "Tap", string constructor = "", string intend = "return new Intent([new Deed.Handle()], new Work());") =>
        $$"""
        public sealed class {{className}} : Verb<NoParticulars>
        {
            {{constructor}}
            public override string Name => "{{name}}";
            public override string Summary => "Taps the piece.";
            public override StepKind Kind => StepKind.Preparation;
            protected override Intent Intend(Job job, NoParticulars particulars) { {{intend}} }
        }
        """;

    /// <summary>A rule with a body for its judgement.</summary>
    public static string Rule(string name, string className, string judge) =>
        $$"""
        public sealed class {{className}} : Rule
        {
            public override string Name => "{{name}}";
            public override string Summary => "Asks for little.";
            public override string Source => "common practice";
            public override IEnumerable<Verdict> Judge(Moment moment) { {{judge}} }
        }
        """;

    /// <summary>Compiles a plugin into <c>FOLDER/NAME/Pipeline.Plugins.NAME.dll</c> and returns that path.</summary>
    /// <param name="folder">The folder of plugins.</param>
    /// <param name="name">The plugin's name.</param>
    /// <param name="contract">The path of the contract's assembly.</param>
    /// <param name="code">Its classes.</param>
    public static string Lay(string folder, string name, string contract, params string[] code)
    {
        var file = Path.Combine(Directory.CreateDirectory(Path.Combine(folder, name)).FullName, $"Pipeline.Plugins.{name}.dll");
        Compile(file, $"Pipeline.Plugins.{name}", Usings + string.Join('\n', code), [.. Platform, MetadataReference.CreateFromFile(contract)]);
        return file;
    }

    /// <summary>Compiles a plugin that was built against another version of the contract.</summary>
    public static string LayForContract(string folder, string name, Version version)
    {
        var other = Path.Combine(Directory.CreateTempSubdirectory("contract").FullName, "Pipeline.Abstractions.dll");
        Compile(
            other,
            "Pipeline.Abstractions",
            $"[assembly: System.Reflection.AssemblyVersion(\"{version}\")] namespace Pipeline.Abstractions {{ public abstract class Verb {{ }} }}",
            Platform);
        var file = Path.Combine(Directory.CreateDirectory(Path.Combine(folder, name)).FullName, $"Pipeline.Plugins.{name}.dll");
        Compile(
            file, $"Pipeline.Plugins.{name}", "public sealed class Tap : Pipeline.Abstractions.Verb { }", [.. Platform, MetadataReference.CreateFromFile(other)]);
        return file;
    }

    private static readonly MetadataReference[] Platform =
    [
        .. ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(path => Path.GetFileName(path) is "System.Private.CoreLib.dll" or "System.Runtime.dll" or "System.Collections.dll" or "System.Linq.dll" or "netstandard.dll")
            .Select(path => MetadataReference.CreateFromFile(path)),
    ];

    private static void Compile(string file, string assembly, string code, MetadataReference[] references)
    {
        var made = CSharpCompilation.Create(
                assembly,
                [CSharpSyntaxTree.ParseText(code)],
                references,
                new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary))
            .Emit(file);
        if (!made.Success)
            throw new InvalidOperationException(string.Join('\n', made.Diagnostics));
    }
}
