using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using Pipeline.Planning;
using Pipeline.Workflows;

namespace Pipeline.Reports;

/// <summary>A plan as JSON, described by <c>docs/plan.schema.json</c>. Everything the plan holds, under the same names and units.</summary>
public static class PlanJson
{
    /// <summary>The version of the format. A reader may rely on what it knows of a version; a change that breaks a reader raises it.</summary>
    public const int Version = 1;

    /// <summary>The plan as a JSON document.</summary>
    public static string Render(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return JsonText.Document(json =>
        {
            json.WriteString("kind", "plan");
            json.WriteNumber("version", Version);
            json.WriteString("batch", plan.Batch);
            json.WriteString("zone", plan.Zone.Id);
            json.Moment("from", plan.From);
            json.WriteString("pace", plan.Pace == Pace.Brisk ? "brisk" : "comfortable");
            if (plan.Done is { } done)
                json.Object("done", () => WriteDone(json, done, plan.Zone));
            json.Objects("days", plan.Days, day =>
            {
                json.WriteString("date", LocalDatePattern.Iso.Format(day.Date));
                json.Objects("sittings", day.Sittings, sitting => WriteSitting(json, sitting));
            });
            WriteAround(json, plan);
        });
    }

    private static void WriteDone(Utf8JsonWriter json, DoneWork done, DateTimeZone zone)
    {
        json.Moment("until", done.Until.InZone(zone));
        json.Optional("asIn", done.AsIn);
        json.Objects("tasks", done.Tasks, task =>
        {
            json.WriteString("model", task.Model);
            json.WriteString("step", task.Step);
            json.WriteNumber("coat", task.Coat);
            json.WriteNumber("ofCoats", task.OfCoats);
            json.WriteNumber("firstUnit", task.FirstUnit);
            json.WriteNumber("units", task.Units);
            json.WriteNumber("ofUnits", task.OfUnits);
            json.WriteString("painter", task.Painter);
            json.Moment("exactStart", task.Start.InZone(zone));
            json.Moment("exactEnd", task.End.InZone(zone));
            json.Moment("workStart", task.WorkStart.InZone(zone));
            json.Moment("workEnd", task.WorkEnd.InZone(zone));
            json.WriteBoolean("together", task.Together);
            json.Moment("sittingFrom", task.Sitting.InZone(zone));
            json.Moment("sittingTo", task.SittingEnd.InZone(zone));
            json.WriteString("words", task.Words);
            json.WriteBoolean("cleansFirst", task.CleansFirst);
        });
        json.Objects("closeDowns", done.CloseDowns, close =>
        {
            json.WriteString("painter", close.Painter);
            json.Moment("exactStart", close.Start.InZone(zone));
            json.Moment("exactEnd", close.End.InZone(zone));
            json.Moment("sittingFrom", close.Sitting.InZone(zone));
        });
    }

    private static void WriteSitting(Utf8JsonWriter json, PlannedSitting sitting)
    {
        json.WriteString("painter", sitting.Painter);
        json.Moment("from", sitting.From);
        json.Moment("to", sitting.To);
        json.WriteNumber("attendedMinutes", sitting.AttendedMinutes);
        if (sitting.MostPerDayMinutes is { } most)
            json.WriteNumber("mostPerDayMinutes", most);
        json.Texts("takeOut", sitting.TakeOut);
        json.Objects("mixes", sitting.Mixes, mix =>
        {
            json.WriteString("name", mix.Name);
            json.Millilitres("millilitres", mix.Millilitres);
            json.Optional("useBy", mix.UseBy);
            if (!mix.AlsoFor.IsEmpty)
                json.Texts("alsoFor", mix.AlsoFor);
            json.Objects("parts", mix.Parts, part =>
            {
                json.WriteString("name", part.Name);
                json.Millilitres("parts", part.Parts);
                json.Millilitres("millilitres", part.Millilitres);
                json.WriteNumber("drops", part.Drops);
            });
        });
        json.Objects("tasks", sitting.Tasks, task => WriteTask(json, task));
        json.Objects("drying", sitting.Drying, left =>
        {
            json.WriteString("model", left.Model);
            json.WriteString("what", left.What);
            json.WriteString("for", left.For);
            json.Moment("until", left.Until);
        });
        if (sitting.Free is { } free)
        {
            json.Object("free", () =>
            {
                json.WriteNumber("minutes", free.Minutes);
                json.WriteString("because", Word(free.Because));
                if (free.Because is FreeBecause.CouldBegin could)
                    json.WriteString("task", could.Task);
            });
        }

        json.Objects("masksOn", sitting.MasksOn, mask =>
        {
            json.WriteString("model", mask.Model);
            json.WriteString("mask", mask.Mask);
            json.Moment("comesOff", mask.ComesOff);
            json.Optional("mustBeOffBy", mask.MustBeOffBy);
        });
        json.Objects("cautions", sitting.Cautions, caution =>
        {
            json.WriteString("name", caution.Name);
            json.WriteString("text", caution.Text);
        });
    }

    private static void WriteTask(Utf8JsonWriter json, PlannedTask task)
    {
        json.WriteString("id", task.Id);
        json.WriteString("sort", task.Sort == TaskSort.CloseDown ? "close-down" : "step");
        json.Moment("from", task.From);
        json.Moment("to", task.To);
        json.WriteString("words", task.Words);
        json.Moment("exactStart", task.ExactStart.InZone(task.From.Zone));
        json.Moment("exactEnd", task.ExactEnd.InZone(task.From.Zone));
        if (task.Sort == TaskSort.Step)
        {
            json.Moment("workStart", task.ExactWorkStart.InZone(task.From.Zone));
            json.Moment("workEnd", task.ExactWorkEnd.InZone(task.From.Zone));
            json.WriteBoolean("together", task.Together);
            json.WriteString("step", task.Step);
            json.WriteString("verb", task.Verb);
            json.WriteString("kit", task.Kit);
            json.WriteString("model", task.Model);
            json.WriteNumber("firstUnit", task.FirstUnit);
            json.WriteNumber("units", task.Units);
            json.WriteNumber("ofUnits", task.OfUnits);
            json.WriteNumber("coat", task.Coat);
            json.WriteNumber("ofCoats", task.OfCoats);
            json.Texts("areas", task.Areas);
        }

        if (task.Paint is { } paint)
        {
            json.Object("paint", () =>
            {
                json.WriteString("name", paint.Name);
                json.Millilitres("millilitres", paint.Millilitres);
                json.WriteNumber("loads", paint.Loads);
                if (paint.FromMix is { } mix)
                    json.WriteNumber("fromMix", mix);
                json.Optional("mixedBy", paint.MixedBy);
            });
        }

        json.Optional("tool", task.Tool);
        if (task.CleanOutBefore is { } clean)
        {
            json.Object("cleanOutBefore", () =>
            {
                json.WriteString("tool", clean.Tool);
                json.WriteString("of", clean.Of);
                json.WriteNumber("minutes", clean.Minutes);
            });
        }

        json.Optional("loadedUntil", task.LoadedUntil);
        json.Objects("starts", task.Starts, wait =>
        {
            json.WriteString("for", wait.For);
            json.Moment("earliest", wait.Earliest);
            json.Moment("comfortable", wait.Comfortable);
            json.WriteBoolean("isDefault", wait.IsDefault);
        });
        json.WriteString("whyNotEarlier", task.WhyNotEarlier);
        json.WriteBoolean("followsOn", task.FollowsOn);
        json.Optional("notLaterThan", task.NotLaterThan);
        json.Optional("note", task.Note);
        json.Texts("cautions", task.Cautions);
        if (task.Place is { } place)
            json.Object("place", () => json.Place(place));
    }

    private static void WriteAround(Utf8JsonWriter json, Plan plan)
    {
        json.Objects("finishes", plan.Finishes, finish =>
        {
            json.WriteString("model", finish.Model);
            json.WriteString("kit", finish.Kit);
            json.WriteNumber("units", finish.Units);
            json.Moment("lastTask", finish.LastTask);
            json.Moment("ready", finish.Ready);
            json.Optional("due", finish.Due);
            json.Optional("cured", finish.Cured);
        });
        json.Objects("masks", plan.Masks, mask =>
        {
            json.WriteString("model", mask.Model);
            json.WriteString("mask", mask.Mask);
            json.WriteString("material", mask.Material);
            json.Moment("on", mask.On);
            json.Moment("off", mask.Off);
            json.Optional("mustBeOffBy", mask.MustBeOffBy);
        });
        json.Objects("shopping", plan.Shopping, item =>
        {
            json.WriteString("name", item.Name);
            json.Millilitres("needMillilitres", item.NeedMillilitres);
            if (item.StockMillilitres is { } stock)
                json.Millilitres("stockMillilitres", stock);
            json.Texts("usedIn", item.UsedIn);
        });
        json.Object("measure", () =>
        {
            json.WriteNumber("attendedMinutes", plan.Measure.AttendedMinutes);
            json.WriteNumber("openMinutes", plan.Measure.OpenMinutes);
            json.WriteNumber("boundOpenMinutes", plan.Measure.BoundOpenMinutes);
            json.Moment("noneReadyBefore", plan.Measure.NoneReadyBefore);
            json.WriteNumber("gapEvenings", plan.Measure.GapEvenings);
            json.WriteBoolean("isBestAsParted", plan.Measure.IsBestAsParted);
            json.WriteNumber("cleanOuts", plan.Measure.CleanOuts);
            json.WriteBoolean("stoppedEarly", plan.Measure.StoppedEarly);
        });
        if (plan.Kept is { } kept)
        {
            json.Object("kept", () =>
            {
                json.WriteNumber("unmoved", kept.Unmoved);
                json.WriteNumber("moved", kept.Moves.Count);
                json.WriteNumber("toAnotherSitting", kept.Moves.Count(move => move.IsToAnotherSitting));
                json.WriteNumber("added", kept.Added.Count);
                json.WriteNumber("gone", kept.Gone.Count);
            });
        }

        json.Texts("criticalChain", plan.CriticalChain);
        json.Objects("waysOut", plan.WaysOut, way => WayOutJson.Write(json, way));
        json.Objects("findings", plan.Findings.GravestFirst(), finding => FindingJson.Write(json, finding));
        json.Texts("assumptions", plan.Assumptions);
    }

    private static string Word(FreeBecause because) => because switch
    {
        FreeBecause.AllWaits => "all-waits",
        FreeBecause.Decided => "decided",
        FreeBecause.HasShare { IsEven: true } => "keeps-even",
        FreeBecause.HasShare => "has-share",
        FreeBecause.CouldBegin { Why: WhyNotBegun.NothingSooner } => "nothing-sooner",
        FreeBecause.CouldBegin { Why: WhyNotBegun.NothingFound } => "nothing-sooner-found",
        FreeBecause.CouldBegin { Why: WhyNotBegun.StaysClose } => "stays-close",
        FreeBecause.CouldBegin => "other-aim",
        _ => "too-short",
    };
}
