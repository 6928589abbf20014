using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>
/// From the mends of findings to changes of the text of one file. Comments, layout and the rest of the text stay as they are. Each
/// change is proved: the changed text is read again and must say what the mend says and nothing else; otherwise none is offered. Pure.
/// </summary>
public sealed class Mending
{
    // proving a change reads the whole text again; a file full of mistakes must not hold the program up
    private const long MostLettersRead = 10_000_000;

    private readonly SourceText source;
    private readonly SyntaxNode? root;
    private readonly TextLines lines;
    private readonly Lazy<RoutePlaces> places;
    private long lettersRead;

    /// <param name="source">The text the findings are about.</param>
    public Mending(SourceText source)
    {
        ArgumentNullException.ThrowIfNull(source);
        this.source = source;
        lines = new TextLines(source.Text.StartsWith('\uFEFF') ? source.Text[1..] : source.Text);
        root = lines.HasOddEnds ? null : Reader.Read(source).Tree?.Root;
        places = new Lazy<RoutePlaces>(() => new RoutePlaces(root!));
    }

    /// <summary>A finding's mend as changes to the text; empty if it has none, is silenced, or the text cannot be changed faithfully.</summary>
    public Sequence<Edit> EditsOf(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (finding is not { Mend: { } mend, Silenced: null } || root is null || finding.Place.File != source.Name || !IsWhole(mend))
            return [];
        return Change(mend, finding) is { } change && IsProved(change) ? change.Edits : [];
    }

    /// <summary>The findings with the changes that mend them; those of other files are left as they are.</summary>
    public Sequence<Finding> WithEdits(Sequence<Finding> findings) =>
        findings.Select(finding => EditsOf(finding) is { IsEmpty: false } edits ? finding with { Edits = edits } : finding).ToSequence();

    // a plugin may have been built without null checks
    private static bool IsWhole(Mend mend) => mend switch
    {
        Mend.PutBefore put => put.Step is not null && IsWhole(put.New),
        Mend.PutAfter put => put.Step is not null && IsWhole(put.New),
        Mend.MoveBefore move => move is { Step: not null, Other: not null },
        Mend.MoveAfter move => move is { Step: not null, Other: not null },
        Mend.SetKey set => set is { Step: not null, Key: not null, Value: not null },
        Mend.TakeOut take => take.Step is not null,
        Mend.Rename rename => rename is { At: not null, Name: not null },
        _ => false,
    };

    private static bool IsWhole(NewStep? step) =>
        step is { Verb: not null, On: not null and not Acting.MaskOf { Step: null } } && step.Particulars.All(each => each is { Key: not null, Value: not null });

    private sealed record Changed(Sequence<Edit> Edits, SyntaxNode Expected);

    private Changed? Change(Mend mend, Finding finding) => mend switch
    {
        Mend.PutBefore put => Put(put.Step, put.New, finding, isAfter: false),
        Mend.PutAfter put => Put(put.Step, put.New, finding, isAfter: true),
        Mend.MoveBefore move => Move(move.Step, move.Other, isAfter: false),
        Mend.MoveAfter move => Move(move.Step, move.Other, isAfter: true),
        Mend.SetKey set => SetKey(set),
        Mend.TakeOut take => TakeOut(take.Step),
        Mend.Rename rename => Rename(rename),
        _ => null,
    };

    private Changed? Put(Place at, NewStep step, Finding finding, bool isAfter)
    {
        if (Found(at) is not { } there || StepLines.Of(there, lines) is not { } set || Names(step.On, finding, there) is not { } names)
            return null;
        var target = names.Count == 1 ? (SyntaxNode)TreeEdits.Text(there.Mapping, names[0]) : TreeEdits.List(there.List, [.. names.Select(name => TreeEdits.Text(there.Mapping, name))]);
        var entry = TreeEdits.Mapping(there.Mapping,
        [
            new Entry(TreeEdits.Text(there.Mapping, step.Verb), target),
            .. step.Particulars.Select(each => new Entry(TreeEdits.Text(there.Mapping, each.Key), TreeEdits.Text(there.Mapping, each.Value))),
        ]);
        var pairs = step.Particulars.Select(each => $"{each.Key}: {StepText.Scalar(each.Value)}").Prepend($"{step.Verb}: {StepText.Names(names)}").ToList();
        var written = there.Mapping.IsFlow
            ? [set.Lead + "{ " + string.Join(", ", pairs) + " }"]
            : pairs.Select((pair, index) => (index == 0 ? set.Lead : new string(' ', set.KeyIndent)) + pair).ToList();
        var index = there.Index + (isAfter ? 1 : 0);
        var items = there.List.Items.Take(index).Append(entry).Concat(there.List.Items.Skip(index)).ToList();
        return new Changed([Insert(isAfter ? set.Last + 1 : set.Comment, written, set.First)], TreeEdits.With(root!, there.List, TreeEdits.List(there.List, items)));
    }

    private IReadOnlyList<string>? Names(Acting on, Finding finding, StepNode there)
    {
        switch (on)
        {
            case Acting.All:
                return ["all"];
            case Acting.TheAreas when !there.IsInScheme:
                return finding.Areas.IsEmpty ? null : finding.Areas;
            case Acting.TheAreas:
                return Found(finding.Place) is { } named && ReferenceEquals(named.List, there.List) ? StepText.NamesIn(named.Verb.Value) : null;
            case Acting.MaskOf mask when Found(mask.Step) is { } step:
                return StepText.NamesIn(step.Mapping["as"] ?? step.Verb.Value);
            default:
                return null;
        }
    }

    private Changed? Move(Place from, Place to, bool isAfter)
    {
        if (Found(from) is not { } step || Found(to) is not { } other || !ReferenceEquals(step.List, other.List) || step.Index == other.Index)
            return null;
        if (StepLines.Of(step, lines) is not { } moved || StepLines.Of(other, lines) is not { } set || moved.Lead != set.Lead)
            return null;
        var line = isAfter ? set.Last + 1 : set.Comment;
        if (line >= moved.Comment && line <= moved.Last + 1)
            return null;
        var written = Enumerable.Range(moved.Comment, moved.Last - moved.Comment + 1).Select(each => lines[each].ToString()).ToList();
        var items = step.List.Items.ToList();
        items.RemoveAt(step.Index);
        items.Insert(other.Index + (isAfter ? 1 : 0) - (step.Index < other.Index ? 1 : 0), step.Mapping);
        Edit[] edits = [Insert(line, written, set.First), Remove(moved.Comment, moved.Last)];
        return new Changed(edits.OrderBy(edit => edit.From).ToSequence(), TreeEdits.With(root!, step.List, TreeEdits.List(step.List, items)));
    }

    private Changed? TakeOut(Place at)
    {
        if (Found(at) is not { List.Items.Count: > 1 } step || StepLines.Of(step, lines) is not { } set)
            return null;
        for (var line = set.First; line <= set.Last; line++)
        {
            // what the painter remarked there is not thrown away
            if (lines.IsComment(line) || lines[line].Contains(" #", StringComparison.Ordinal))
                return null;
        }

        return new Changed([Remove(set.First, set.Last)], TreeEdits.With(root!, step.List, TreeEdits.List(step.List, [.. step.List.Items.Where(item => !ReferenceEquals(item, step.Mapping))])));
    }

    private Changed? SetKey(Mend.SetKey set)
    {
        if (Found(set.Step) is not { } step)
            return null;
        foreach (var entry in step.Mapping.Entries)
        {
            if (entry.Key.Text == set.Key)
                return entry.Value is TextNode value ? Rewrite(value, set.Value) : null;
        }

        var entries = step.Mapping.Entries.Append(new Entry(TreeEdits.Text(step.Mapping, set.Key), TreeEdits.Text(step.Mapping, set.Value))).ToList();
        var expected = TreeEdits.With(root!, step.Mapping, TreeEdits.Mapping(step.Mapping, entries));
        var pair = $"{set.Key}: {StepText.Scalar(set.Value)}";
        if (step.Mapping.IsFlow)
            return InBraces(step.Mapping, pair) is { } edit ? new Changed([edit], expected) : null;
        return StepLines.Of(step, lines) is { } taken
            ? new Changed([Insert(taken.Last + 1, [new string(' ', taken.KeyIndent) + pair], taken.First)], expected)
            : null;
    }

    private Edit? InBraces(MappingNode mapping, string pair)
    {
        var (line, column) = mapping.End;
        if (line > lines.Count || column < 1 || lines[line].Length < column || lines[line][column - 1] != '}')
            return null;
        var inside = lines[line][..(column - 1)].TrimEnd(' ').Length;
        if (inside == 0)
            return null;
        var place = new Place(source.Name, line, inside + 1);
        return new Edit(place, place, ", " + pair);
    }

    private Changed? Rename(Mend.Rename rename) =>
        rename.At.File == source.Name && places.Value.Text(rename.At) is { IsMissing: false } text ? Rewrite(text, rename.Name) : null;

    private Changed? Rewrite(TextNode old, string text)
    {
        if (old.IsMissing || old.Style == TextStyle.Block || old.End.Line != old.Line || old.End.Column <= old.Column)
            return null;
        var edit = new Edit(old.Place, old.Place with { Column = old.End.Column }, StepText.Scalar(text));
        return new Changed([edit], TreeEdits.With(root!, old, TreeEdits.Text(old, text)));
    }

    private StepNode? Found(Place place) => place.File == source.Name ? places.Value.Step(place) : null;

    /// <summary>New lines before a line; after the last line of a text that does not end with a line end, the end goes first.</summary>
    private Edit Insert(int line, List<string> written, int like)
    {
        var end = lines.UsualEnd(like);
        var place = lines.Start(source.Name, line);
        var text = string.Join(end, written);
        return new Edit(place, place, line > lines.Count ? end + text : text + end);
    }

    /// <summary>Lines go; with the last line of the text goes the line end before it.</summary>
    private Edit Remove(int first, int last) => last < lines.Count || first == 1
        ? new Edit(lines.Start(source.Name, first), lines.Start(source.Name, last + 1), "")
        : new Edit(new Place(source.Name, first - 1, lines[first - 1].Length + 1), lines.Start(source.Name, last + 1), "");

    private bool IsProved(Changed change)
    {
        lettersRead += source.Text.Length;
        if (lettersRead > MostLettersRead)
            return false;
        var changed = Editing.Apply(source, change.Edits);
        return Reader.Read(changed).Tree is { } tree && TreeEdits.Same(tree.Root, change.Expected);
    }
}
