using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>A step with the areas it acts on.</summary>
internal readonly record struct BoundStep(Step Step, Sequence<Area> Areas);

/// <summary>Binds one step: its target, its particulars, and what the verb makes of them.</summary>
internal sealed class StepBinder(RouteBinder route)
{
    /// <summary>The step; null and findings if it cannot be bound.</summary>
    /// <param name="form">The step as the file gives it.</param>
    /// <param name="names">What its names mean.</param>
    /// <param name="index">Its index in the route.</param>
    /// <param name="name">Its own name, unlike any other of the route; null if it has none.</param>
    public BoundStep? Bind(RouteItem.Step form, RouteNames names, int index, string? name)
    {
        var target = form.Verb.Target switch
        {
            Target.Masks => names.Masks(form.Target),
            Target.Parts => names.Parts(form.Target),
            _ => names.Named(form.Target),
        };
        var particulars = Particulars(form, names);
        if (target is null || particulars is null)
            return null;

        var areaNames = target.AreaNames;
        var named = form.Verb.Target == Target.Areas ? areaNames : target.Names;
        var job = new Job(route.Model, target.Areas, named, name ?? target.Joined) { Tables = route.Shelf.Tables };
        if (Intend(form, names, job, particulars) is not { } intent || Deeds(form, index, intent) is not { } deeds)
            return null;
        var step = new Step
        {
            Index = index,
            Verb = form.Verb.Name,
            Kind = form.Verb.Kind,
            Place = form.Key.Place,
            FollowedFrom = names.FollowedFrom,
            Scheme = names.Scheme?.Name,
            As = job.As,
            Areas = areaNames,
            Deeds = deeds,
            Work = Work(form, intent.Work, route.Model.Count),
            Cautions = intent.Cautions,
            Note = form.Note,
            Climate = form.Climate,
            Protection = form.Protection,
        };
        return new BoundStep(step, target.Areas);
    }

    private static object? Particulars(RouteItem.Step form, RouteNames names)
    {
        var particulars = form.Verb.Particulars;
        var values = new object?[particulars.Count];
        var isWhole = true;
        for (var i = 0; i < values.Length; i++)
        {
            if (form.Own[i] is { } given)
            {
                values[i] = ParticularReader.Read(names, particulars[i], given.Value);
                isWhole &= values[i] is not null;
            }
            else
            {
                // A key that must be there and is not has been complained about when the step was read.
                values[i] = particulars[i].Default;
                isWhole &= !particulars[i].IsNeeded;
            }
        }

        if (!isWhole)
            return null;
        try
        {
            return form.Verb.Construct(values);
        }
#pragma warning disable CA1031 // whatever a plugin throws must not end the program
        catch (Exception mistake)
#pragma warning restore CA1031
        {
            Blame(form, names, mistake);
            return null;
        }
    }

    /// <summary>Asks the verb. What the plugin throws is a finding, either at the key it names or at its own door.</summary>
    private static Intent? Intend(RouteItem.Step form, RouteNames names, Job job, object particulars)
    {
        try
        {
            var intent = form.Verb.Verb.Intend(job, particulars);
            if (intent is { Work: not null })
                return intent;
            names.Desk.Error(form.Key, $"The verb ‘{form.Verb.Name}’ of the plugin ‘{form.Verb.Plugin}’ says nothing about this step.", "Mend the plugin, or take it out of use.");
            return null;
        }
#pragma warning disable CA1031 // whatever a plugin throws must not end the program
        catch (Exception mistake)
#pragma warning restore CA1031
        {
            Blame(form, names, mistake);
            return null;
        }
    }

    private static void Blame(RouteItem.Step form, RouteNames names, Exception mistake)
    {
        if (mistake is not ParticularException particular)
        {
            names.Desk.Error(form.Key, $"The verb ‘{form.Verb.Name}’ of the plugin ‘{form.Verb.Plugin}’ failed at this step: {mistake.GetType().Name}: {FirstLine(mistake.Message)}", "Mend the plugin, or take the step out.");
            return;
        }

        SyntaxNode at = form.Key;
        var index = form.Verb.IndexOf(particular.Particular);
        if (index < 0)
            index = form.Verb.IndexOf(WordText.Kebab(particular.Particular));
        if (index >= 0 && form.Own[index] is { } given)
            at = given.Value;
        if (names.FollowedFrom is { } from)
            names.Desk.Error(at, FirstLine(particular.Message), null, new Related(from, "followed from here"));
        else
            names.Desk.Error(at, FirstLine(particular.Message));
    }

    private static string FirstLine(string message)
    {
        var end = message.AsSpan().IndexOfAny('\r', '\n');
        return end < 0 ? message : message[..end];
    }

    /// <summary>The deeds with their step's index and the drying times that the step gives; null and a finding if those fit none.</summary>
    private Sequence<Deed>? Deeds(RouteItem.Step form, int index, Intent intent)
    {
        var deeds = intent.Deeds;
        if (form.DryingNode is { } node)
        {
            var lays = deeds.Any(deed => deed is Deed.Lay);
            var settles = deeds.Any(deed => deed is Deed.Prepare { Settles: not null } or Deed.Join { Settles: not null });
            if (lays && form.SingleTime is not null)
                DryingBinder.Bind(route.Desk, node);
            else if (!lays && settles && form.SingleTime is null)
                route.Desk.Error(node, $"What ‘{form.Verb.Name}’ leaves sets; it has no drying states.", "Write one time, such as drying: 12-24 h.");
            else if (!lays && !settles)
                route.Desk.Error(node, $"‘{form.Verb.Name}’ leaves nothing that dries.", "Leave ‘drying’ out; ‘unattended’ says how long something runs by itself.");
            if ((lays && form.SingleTime is not null) || (!lays && (!settles || form.SingleTime is null)))
                return null;
        }

        if (deeds.IsEmpty)
            return deeds;
        var own = new Deed[deeds.Count];
        for (var i = 0; i < own.Length; i++)
            own[i] = Own(deeds[i], form, index);
        return Sequence.Create<Deed>(own);
    }

    private static Deed Own(Deed deed, RouteItem.Step form, int index) => deed switch
    {
        Deed.Lay lay when form.Drying.Count > 0 => lay with
        {
            Layer = lay.Layer with { Step = index, Drying = lay.Layer.Drying.With(form.Drying), HasLabelTimes = true },
        },
        Deed.Lay lay => lay with { Layer = lay.Layer with { Step = index } },
        Deed.Prepare { Settles: not null } prepare when form.SingleTime is { } time => prepare with { Settles = time, IsFromFile = true },
        Deed.Join { Settles: not null } join when form.SingleTime is { } time => join with { Settles = time, IsFromFile = true },
        _ => deed,
    };

    // What is counted once for all of them takes each its part where they go one after another; all on one tray get each its coat.
    private static double ShareOf(Work work, RouteItem.Step form, int units) => (work.Together, form.Together) switch
    {
        (true, false) => 1.0 / units,
        (false, true) when work.NeedsDryingPlace => units,
        _ => 1,
    };

    private static Work Work(RouteItem.Step form, Work work, int units)
    {
        if (!form.HasTimes && form.Together is null && form.Unattended is null && form.CleanedOut == ToolCleaning.AsNeeded && form.Loads is null && form.StandsIn is null)
            return work;
        return work with
        {
            CleanedOut = form.CleanedOut,
            Loads = form.Loads,
            // minutes are said of a unit with all its coats
            PerUnit = (form.Minutes * (1.0 / work.Passes)) ?? (work.PerUnit * ShareOf(work, form, units)),
            SetUp = form.SetUp ?? work.SetUp,
            PutAway = form.PutAway ?? work.PutAway,
            Together = form.Together ?? work.Together,
            Unattended = form.Unattended ?? work.Unattended,
            StandsIn = form.StandsIn,
            IsFromFile = work.IsFromFile || form.HasTimes,
        };
    }
}
