using System.Collections.Frozen;

namespace Pipeline.Abstractions;

/// <summary>
/// The trade's tables as they hold for a batch, for verbs and rules to read. A family without rows of its own shares those of the family
/// it is <see cref="Family.Like"/>, and failing that those of the first family of the compatibility table with the same carrier.
/// </summary>
public sealed class Tables
{
    /// <summary>The source of rows that a workflow file gives.</summary>
    public const string TheFile = "the file";

    private readonly TableRows rows;
    private readonly Dictionary<string, Family> families = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Coat, bool AsEffect, string Over), CoatOver> compatibility = [];
    private readonly Dictionary<(Liquid Liquid, string Coat), Rewets> rewetting = [];
    private readonly Dictionary<string, Setting> settings = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Figure> figures = new(StringComparer.Ordinal);
    private readonly Dictionary<Carrier, string> standIns = [];

    // every pair of families is looked up once: rules ask at every step
    private readonly FrozenDictionary<Family, int> indexes;
    private readonly CoatOver?[] pairs;

    /// <summary>The tables of these rows; of two rows about the same thing the later counts.</summary>
    public Tables(TableRows rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        this.rows = rows;
        foreach (var family in rows.Families)
            families[family.Name] = family;
        foreach (var row in rows.Compatibility)
        {
            compatibility[(row.Coat, row.AsEffect, row.Over)] = row;
            if (families.TryGetValue(row.Coat, out var family))
                standIns.TryAdd(family.Carrier, family.Name);
        }

        foreach (var row in rows.Rewetting)
            rewetting[(row.Liquid, row.Coat)] = row;
        foreach (var row in rows.Settings)
            settings[row.Name] = row;
        foreach (var row in rows.Figures)
            figures[row.Name] = row;

        var known = families.Values.ToArray();
        indexes = known.Select((family, index) => KeyValuePair.Create(family, index)).ToFrozenDictionary(SameFamily.Comparer);
        pairs = new CoatOver?[known.Length * known.Length * 2];
        for (var coat = 0; coat < known.Length; coat++)
        {
            for (var over = 0; over < known.Length; over++)
            {
                pairs[At(coat, over, asEffect: false)] = Find(known[coat], asEffect: false, known[over]);
                pairs[At(coat, over, asEffect: true)] = Find(known[coat], asEffect: true, known[over]);
            }
        }
    }

    /// <summary>Tables without a row.</summary>
    public static Tables Empty { get; } = new(new TableRows());

    /// <summary>All the rows, in their order.</summary>
    public TableRows Rows => rows;

    /// <summary>The family of a name, or null.</summary>
    public Family? Family(string name) => families.GetValueOrDefault(name);

    /// <summary>What is known of a coat of one family over a coat of another; null if nothing is.</summary>
    /// <param name="coat">The family of the new coat.</param>
    /// <param name="asEffect">Whether it is laid as a very thin effect.</param>
    /// <param name="over">The family of the coat under it.</param>
    public CoatOver? Over(Family coat, bool asEffect, Family over) =>
        indexes.TryGetValue(coat, out var first) && indexes.TryGetValue(over, out var second)
            ? pairs[At(first, second, asEffect)]
            : Find(coat, asEffect, over);

    /// <summary>What a liquid does to a coat of a family; null if nothing is known.</summary>
    public Rewets? Rewetting(Liquid liquid, Family coat)
    {
        foreach (var name in NamesOf(coat))
        {
            if (rewetting.TryGetValue((liquid, name), out var row))
                return row;
        }

        return null;
    }

    /// <summary>How long something takes to set, by its name.</summary>
    /// <exception cref="ArgumentException">There is no such row.</exception>
    public Setting Setting(string name) =>
        settings.GetValueOrDefault(name) ?? throw new ArgumentException($"The table of setting times has no row '{name}'.", nameof(name));

    /// <summary>A number that a rule goes by, by its name.</summary>
    /// <exception cref="ArgumentException">There is no such row.</exception>
    public Figure Figure(string name) =>
        figures.GetValueOrDefault(name) ?? throw new ArgumentException($"The table of figures has no row '{name}'.", nameof(name));

    /// <summary>The thinner a name stands for: the row of that name, or else the first whose name it holds; null if its name does not say.</summary>
    public Thinner? Thinner(string name)
    {
        Thinner? found = null;
        for (var i = rows.Thinners.Count - 1; i >= 0; i--)
        {
            var row = rows.Thinners[i];
            if (name.Equals(row.Name, StringComparison.OrdinalIgnoreCase))
                return row;
            if (name.Contains(row.Name, StringComparison.OrdinalIgnoreCase))
                found = row;
        }

        return found;
    }

    /// <summary>The minutes that a change of load usually takes; null if no row says.</summary>
    public CleanOutTime? CleanOut(ToolChange change)
    {
        for (var i = rows.CleanOuts.Count - 1; i >= 0; i--)
        {
            if (rows.CleanOuts[i].Change == change)
                return rows.CleanOuts[i];
        }

        return null;
    }

    private int At(int coat, int over, bool asEffect) => (((coat * indexes.Count) + over) * 2) + (asEffect ? 1 : 0);

    private CoatOver? Find(Family coat, bool asEffect, Family over)
    {
        foreach (var name in NamesOf(coat))
        {
            foreach (var under in NamesOf(over))
            {
                if (asEffect && compatibility.TryGetValue((name, true, under), out var effect))
                    return effect;
                if (compatibility.TryGetValue((name, false, under), out var row))
                    return row;
            }
        }

        return null;
    }

    private IEnumerable<string> NamesOf(Family family)
    {
        yield return family.Name;
        if (family.Like is { } like)
            yield return like;
        if (standIns.TryGetValue(family.Carrier, out var standIn))
            yield return standIn;
    }

    /// <summary>Families of one batch are the same things wherever they are named.</summary>
    private sealed class SameFamily : IEqualityComparer<Family>
    {
        public static SameFamily Comparer { get; } = new();

        public bool Equals(Family? x, Family? y) => ReferenceEquals(x, y);

        public int GetHashCode(Family obj) => System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(obj);
    }
}
