using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads the entries of a route: which verb, which keys, and what can be understood without knowing the model.</summary>
internal sealed class StepReader(Desk desk, Shelf shelf, Bench? bench, BenchUse use)
{
    public const string FollowKey = "follow";

    /// <summary>Keys that any step can have.</summary>
    public static readonly Key[] CommonKeys =
    [
        new("as", "a name for the step, by which ‘after’, ‘unmask’ and the plan call it", Needed: false, "first brass", "its areas, parted by +"),
        new("after", "one or more steps of the same model, by their ‘as’ names, that must be done before", Needed: false, "[first brass]"),
        new("at", "a date and time already decided for its start, or its first coat's", Needed: false, "2026-12-05 10:00"),
        new("minutes", "attended time for one unit, with all its coats; a number alone is minutes", Needed: false, "12 min", "the verb's, by area and method"),
        new("set-up", "attended time once before the lot; before each coat where coats dry between", Needed: false, "10 min", "the verb's"),
        new("put-away", "attended time once after the lot; after each coat where coats dry between", Needed: false, "5 min", "the verb's"),
        new("together", "whether all units are done at once", Needed: false, "yes", "the verb's"),
        new("unattended", "time it runs by itself after the hands are done; after each coat where coats dry between", Needed: false, "2 h", "the verb's"),
        new("in", "the place or machine at the bench each unit stands in meanwhile, and until a new coat is touch-dry", Needed: false, "curing lamp", "nowhere, or the drying rack"),
        new("drying", "times by drying state for what it lays; one time for glue or filler to set", Needed: false, "{ mask-safe: 12-24 h }", "the paint's"),
        new("climate", "the air it is done in, where that is not the bench's", Needed: false, "{ air: 14 °C, humidity: 85 %, surface: 13 °C }", "the bench's"),
        new("pace", "how close to the low drying figures it follows on what it waits for: comfortable or brisk", Needed: false, "brisk", "the batch's"),
        new("clean-out", "how the tool is cleaned out before it: as-needed, none, flush or strip", Needed: false, "strip", "as-needed"),
        new("loads", "in how many fillings of the cup it is to be sprayed on the whole lot", Needed: false, "2", "as many as it takes"),
        new("protection", "what protects you here, where it is not as at the bench", Needed: false, "{ extraction: yes }", "the bench's"),
        new("note", "a remark, shown on the plan", Needed: false, "keep it thin"),
        new("allow", "rules silenced here, each with the reason", Needed: false, "{ mask-on-too-long: tried on a card }"),
    ];

    private static readonly string[] CommonNames = [.. CommonKeys.Select(key => key.Name)];

    /// <summary>The entries of a route; entries that are no mapping at all are left out.</summary>
    public List<RouteItem> Read(SyntaxNode route)
    {
        var items = new List<RouteItem>();
        if (route is not ListNode { Items.Count: > 0 } list)
        {
            desk.Error(route, route is TextNode { IsMissing: true } or ListNode ? "The route has no steps." : $"Here stands {route.Kind}.", "Write the steps as a list, each beginning with ‘- ’ and a verb, such as ‘- undercoat: all’.");
            return items;
        }

        foreach (var node in list.Items)
        {
            if (desk.Mapping(node, "a verb with its areas, such as ‘undercoat: all’") is { } mapping && ReadOne(mapping) is { } item)
                items.Add(item);
        }

        return items;
    }

    private RouteItem? ReadOne(MappingNode mapping)
    {
        foreach (var entry in mapping.Entries)
        {
            if (entry.Key.Text == FollowKey)
                return ReadFollow(mapping, entry);
        }

        if (VerbOf(mapping) is { } verb)
            return ReadStep(mapping, verb.Entry, verb.Form);
        if (mapping.Entries.Count == 0)
            return null;
        return mapping["as"] is TextNode { IsMissing: false } name
            ? new RouteItem.Unusable(mapping.Entries[0].Key) { As = Desk.Plain(name.Text), AsNode = name }
            : new RouteItem.Unusable(mapping.Entries[0].Key);
    }

    /// <summary>The entry that is the step's verb. A key that is a verb's name as well as another verb's own key is taken as the latter.</summary>
    private (Entry Entry, VerbForm Form)? VerbOf(MappingNode mapping)
    {
        (Entry Entry, VerbForm Form)? found = null;
        foreach (var entry in mapping.Entries)
        {
            if (shelf.Verbs.Named(entry.Key.Text) is not { } form || (found is { } first && first.Form.IndexOf(entry.Key.Text) >= 0))
                continue;
            if (found is not { } before || form.IndexOf(before.Entry.Key.Text) >= 0)
            {
                found = (entry, form);
                continue;
            }

            desk.Error(entry.Key, $"This step has two verbs, ‘{before.Entry.Key.Text}’ and ‘{entry.Key.Text}’.", "Make two steps of it, each with its own ‘- ’.", new Related(before.Entry.Key.Place, "the first verb"));
            return null;
        }

        if (found is null)
            NoVerb(mapping);
        else if (found.Value.Form.Broken is { } broken)
            desk.Error(found.Value.Entry.Key, $"The verb ‘{found.Value.Form.Name}’ of the plugin ‘{found.Value.Form.Plugin}’ cannot be used: {broken}.", "Mend the plugin, or take it out of use.");
        return found is { Form.Broken: null } ? found : null;
    }

    private void NoVerb(MappingNode mapping)
    {
        foreach (var (key, _) in mapping.Entries)
        {
            if (Array.IndexOf(CommonNames, key.Text) >= 0)
                continue;
            desk.UnknownName(key, key.Text, "verb", shelf.Verbs.Names.Append(FollowKey), "No plugin brought any verb.");
            return;
        }

        desk.Error(mapping, "This step has no verb.", "Begin it with a verb and its areas, such as ‘undercoat: all’.");
    }

    private RouteItem.Follow? ReadFollow(MappingNode mapping, Entry follow)
    {
        var bindings = new List<Entry>(mapping.Entries.Count);
        Sequence<SyntaxNode> after = [];
        Sequence<Silence> silences = [];
        foreach (var entry in mapping.Entries)
        {
            if (entry.Key.Text == "after")
                after = desk.OneOrMore(entry.Value, "the ‘as’ name of a step");
            else if (entry.Key.Text == "allow")
                silences = SilenceBinder.Bind(desk, shelf, entry.Value);
            else if (entry.Key.Text != FollowKey)
                bindings.Add(entry);
        }

        return desk.Text(follow.Value, "the name of a scheme") is { } scheme
            ? new RouteItem.Follow(follow.Key, scheme, follow.Value, mapping, bindings) { After = after, Silences = silences }
            : null;
    }

    private RouteItem.Step ReadStep(MappingNode mapping, Entry verb, VerbForm form)
    {
        var step = new RouteItem.Step(verb.Key, verb.Value, form);
        foreach (var entry in mapping.Entries)
        {
            if (ReferenceEquals(entry.Key, verb.Key))
                continue;
            var own = form.IndexOf(entry.Key.Text);
            if (own >= 0)
                step.Own[own] = entry;
            else if (!TakeCommon(step, entry.Key, entry.Value))
                desk.UnknownKey(entry.Key, $"a ‘{form.Name}’ step", form.Particulars.Select(particular => particular.Name).Concat(CommonNames));
        }

        foreach (var (particular, given) in form.Particulars.Zip(step.Own))
        {
            if (given is null && particular.IsNeeded)
                desk.MissingKey(mapping, $"This ‘{form.Name}’ step", particular.Name, particular.Kind.Expected, verb.Key);
        }

        return step;
    }

    private bool TakeCommon(RouteItem.Step step, TextNode key, SyntaxNode value)
    {
        switch (key.Text)
        {
            case "as":
                step.As = desk.NewName(value, "the step");
                step.AsNode = value as TextNode;
                break;
            case "after":
                step.After = desk.OneOrMore(value, "the ‘as’ name of a step");
                break;
            case "at":
                step.At = At(value);
                step.AtPlace = value.Place;
                break;
            case "minutes":
                step.Minutes = desk.Said(value, DurationText.PlainMinutes, "minutes such as 12 min");
                break;
            case "set-up":
                step.SetUp = desk.Said(value, DurationText.Attended, DurationText.Expected);
                break;
            case "put-away":
                step.PutAway = desk.Said(value, DurationText.Attended, DurationText.Expected);
                break;
            case "together":
                step.Together = desk.YesOrNo(value);
                break;
            case "unattended":
                step.Unattended = desk.Said(value, DurationText.Drying, DurationText.Expected);
                break;
            case "in":
                step.StandsIn = PlaceNamed(value);
                break;
            case "drying":
                TakeDrying(step, value);
                break;
            case "climate":
                step.Climate = ClimateBinder.BindOne(desk, value);
                break;
            case "clean-out":
                step.CleanedOut = desk.Said(value, Choice.Of<ToolCleaning>.Read, Choice.Of<ToolCleaning>.Expected) ?? ToolCleaning.AsNeeded;
                break;
            case "loads":
                step.Loads = desk.Said(value, text => NumberText.Whole(text, 1, 999), "how many fillings of the cup, such as 2");
                break;
            case "pace":
                step.Pace = desk.Said(value, Choice.Of<Pace>.Read, Choice.Of<Pace>.Expected);
                break;
            case "protection":
                step.Protection = ProtectionBinder.Bind(desk, value);
                break;
            case "note":
                step.Note = desk.Text(value, "a remark");
                break;
            case "allow":
                step.Silences = SilenceBinder.Bind(desk, shelf, value);
                break;
            default:
                return false;
        }

        return true;
    }

    private string? PlaceNamed(SyntaxNode node)
    {
        if (desk.Text(node, "a place or machine of the bench") is not { } name)
            return null;
        if (bench is null)
            return null;
        if (bench.Tools.FirstOrDefault(tool => string.Equals(tool.Name, name, StringComparison.OrdinalIgnoreCase)) is { } known)
        {
            use.NotePlace(node, known.Name);
            return known.Name;
        }

        if (Choice.Of<Liquid>.Read(name).Wrong is null)
            desk.Error(node, $"‘{name}’ is a liquid, and ‘in’ names a place at the bench.", $"Write ‘with: {name}’ where the verb knows a liquid; the bath it stands in is listed under ‘tools’.");
        else
            desk.UnknownName(node, name, "place or machine", bench.Tools.Select(tool => tool.Name), "List it at the bench under ‘tools’, with how many pieces it holds.");
        return null;
    }

    private void TakeDrying(RouteItem.Step step, SyntaxNode value)
    {
        step.DryingNode = value;
        if (value is TextNode { IsMissing: false } single && DurationText.Range(Desk.Plain(single.Text)) is { Wrong: null } time)
            step.SingleTime = time.Value;
        else
            step.Drying = DryingBinder.Bind(desk, value);
    }

    private LocalDateTime? At(SyntaxNode node)
    {
        if (desk.Said(node, CalendarText.DateTime, CalendarText.DateTimeExpected) is not { } time)
            return null;
        if (bench?.Zone is { } zone && zone.MapLocal(time).Count == 0)
            desk.Error(node, SittingBinder.SkippedHour(zone, time), "Write a time before or after that hour.");
        return time;
    }
}
