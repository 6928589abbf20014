using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>
/// What names in a file can mean: the trade's tables by all their names, with what the file says otherwise, and the file's own families,
/// paints and mixes.
/// </summary>
internal sealed class Shelf
{
    private readonly Dictionary<string, Family> families = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Material> materials;
    private readonly Dictionary<string, MaskMaterial> maskMaterials;
    private readonly Dictionary<string, Paint> paints = new(StringComparer.Ordinal);
    private readonly List<Paint> paintsInOrder = [];
    private readonly List<string> familyNames = [];
    private readonly HashSet<string> broken = new(StringComparer.Ordinal);
    private readonly HashSet<string> ownTimes = new(StringComparer.Ordinal);
    private readonly List<string> materialNames = [];
    private readonly List<string> maskMaterialNames = [];
    private TableRows rows;
    private Tables? tables;

    public Shelf(Trade trade)
    {
        Verbs = new VerbForms(trade);
        Rules = [.. trade.Rules.Select(rule => SafeName(rule)).OfType<string>()];
        foreach (var (_, family) in trade.Families)
            Add(family, hasOwnTimes: false);
        materials = ByAllNames(trade.Materials, material => material.Name, material => material.AlsoCalled);
        maskMaterials = ByAllNames(trade.MaskMaterials, material => material.Name, material => material.AlsoCalled);
        materialNames.AddRange(trade.Materials.Select(material => material.Item.Name));
        maskMaterialNames.AddRange(trade.MaskMaterials.Select(material => material.Item.Name));
        rows = new TableRows
        {
            Compatibility = Rows(trade.Compatibility),
            Rewetting = Rows(trade.Rewetting),
            CleanOuts = Rows(trade.CleanOuts),
            Thinners = Rows(trade.Thinners),
            Settings = Rows(trade.Settings),
            Figures = Rows(trade.Figures),
        };
    }

    public VerbForms Verbs { get; }

    public IReadOnlyList<string> Rules { get; }

    public IReadOnlyList<string> MaterialNames => materialNames;

    public IReadOnlyList<string> MaskMaterialNames => maskMaterialNames;

    public IReadOnlyList<string> FamilyNames => familyNames;

    public IReadOnlyList<Paint> Paints => paintsInOrder;

    /// <summary>The trade's tables with what has been read of the file so far.</summary>
    public Tables Tables => tables ??= new Tables(rows with
    {
        Families = familyNames.Select(name => families[WordText.Folded(name)]).ToSequence(),
        Materials = materialNames.Select(name => materials[WordText.Folded(name)]).ToSequence(),
        MaskMaterials = maskMaterialNames.Select(name => maskMaterials[WordText.Folded(name)]).ToSequence(),
    });

    /// <summary>Names of paints and mixes, also those that could not be bound.</summary>
    public IEnumerable<string> PaintNames => paints.Keys.Concat(broken);

    public Family? Family(string name) => families.GetValueOrDefault(WordText.Folded(name));

    public Material? Material(string name) => materials.GetValueOrDefault(WordText.Folded(name));

    public MaskMaterial? MaskMaterial(string name) => maskMaterials.GetValueOrDefault(WordText.Folded(name));

    public Paint? Paint(string name) => paints.GetValueOrDefault(name);

    /// <summary>True for a paint or mix that is in the file but has a mistake of its own, so that naming it is none.</summary>
    public bool IsBroken(string paint) => broken.Contains(paint);

    /// <summary>True for a family whose drying times the file gives.</summary>
    public bool HasOwnTimes(Family family) => ownTimes.Contains(family.Name);

    public void Add(Family family, bool hasOwnTimes)
    {
        if (!families.ContainsKey(WordText.Folded(family.Name)))
            familyNames.Add(family.Name);
        families[WordText.Folded(family.Name)] = family;
        foreach (var name in family.AlsoCalled)
            families[WordText.Folded(name)] = family;
        if (hasOwnTimes)
            ownTimes.Add(family.Name);
        tables = null;
    }

    /// <summary>Puts rows of the file after those there are.</summary>
    public void Add(Func<TableRows, TableRows> with) => (rows, tables) = (with(rows), null);

    public void Add(MaskMaterial material) => Add(maskMaterials, maskMaterialNames, material, material.Name, material.AlsoCalled);

    public void Add(Material material) => Add(materials, materialNames, material, material.Name, material.AlsoCalled);

    public void Add(Paint paint)
    {
        paints[paint.Name] = paint;
        paintsInOrder.Add(paint);
    }

    public void AddBroken(string paint) => broken.Add(paint);

    private void Add<T>(Dictionary<string, T> rows, List<string> names, T row, string name, Sequence<string> alsoCalled)
    {
        if (!rows.ContainsKey(WordText.Folded(name)))
            names.Add(name);
        rows[WordText.Folded(name)] = row;
        foreach (var other in alsoCalled)
            rows[WordText.Folded(other)] = row;
        tables = null;
    }

    private static Sequence<T> Rows<T>(Sequence<Brought<T>> rows) => rows.Select(row => row.Item).ToSequence();

    private static Dictionary<string, T> ByAllNames<T>(Sequence<Brought<T>> rows, Func<T, string> name, Func<T, Sequence<string>> alsoCalled)
    {
        var byName = new Dictionary<string, T>(StringComparer.Ordinal);
        foreach (var (_, row) in rows)
            byName.TryAdd(WordText.Folded(name(row)), row);
        foreach (var (_, row) in rows)
        {
            foreach (var other in alsoCalled(row))
                byName.TryAdd(WordText.Folded(other), row);
        }

        return byName;
    }

    /// <summary>A plugin's rule may throw even when asked for its name; it then cannot be silenced.</summary>
    private static string? SafeName(Brought<Rule> rule)
    {
        try
        {
            return rule.Item.Name;
        }
#pragma warning disable CA1031 // whatever a plugin throws must not end the program
        catch (Exception)
#pragma warning restore CA1031
        {
            return null;
        }
    }
}
