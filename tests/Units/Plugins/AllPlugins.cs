using System.Reflection;
using Pipeline.Abstractions;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>All that the plugins in the house bring, found the way the engine finds it: by exported sealed types.</summary>
internal static class AllPlugins
{
    public static IReadOnlyList<Assembly> Assemblies { get; } =
        [.. Directory.GetFiles(AppContext.BaseDirectory, "Pipeline.Plugins.*.dll").Order(StringComparer.Ordinal).Select(Assembly.LoadFrom)];

    public static IReadOnlyList<Verb> Verbs { get; } = [.. Instances<Verb>()];

    public static IReadOnlyList<Rule> Rules { get; } = [.. Instances<Rule>()];

    public static IReadOnlyList<Family> Families { get; } = Rows<Family>();

    public static IReadOnlyList<Material> Materials { get; } = Rows<Material>();

    public static IReadOnlyList<MaskMaterial> MaskMaterials { get; } = Rows<MaskMaterial>();

    public static IReadOnlyList<CleanOutTime> CleanOuts { get; } = Rows<CleanOutTime>();

    public static IReadOnlyList<CoatOver> Compatibility { get; } = Rows<CoatOver>();

    public static IReadOnlyList<Rewets> Rewetting { get; } = Rows<Rewets>();

    public static IReadOnlyList<Thinner> Thinners { get; } = Rows<Thinner>();

    public static IReadOnlyList<Setting> Settings { get; } = Rows<Setting>();

    public static IReadOnlyList<Figure> Figures { get; } = Rows<Figure>();

    /// <summary>The tables as the house has them, where no file says otherwise.</summary>
    public static Tables Tables { get; } = new(new TableRows
    {
        Families = Families.ToSequence(),
        Compatibility = Compatibility.ToSequence(),
        Rewetting = Rewetting.ToSequence(),
        CleanOuts = CleanOuts.ToSequence(),
        Thinners = Thinners.ToSequence(),
        Settings = Settings.ToSequence(),
        Figures = Figures.ToSequence(),
    });

    private static IEnumerable<T> Instances<T>() =>
        Assemblies
            .SelectMany(assembly => assembly.GetExportedTypes())
            .Where(type => type is { IsSealed: true, IsAbstract: false } && typeof(T).IsAssignableFrom(type))
            .Select(type => (T)Activator.CreateInstance(type)!);

    private static List<T> Rows<T>() => [.. Instances<Catalogue<T>>().SelectMany(catalogue => catalogue.Entries)];
}
