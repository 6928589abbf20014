using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing;

/// <summary>Which glue suits what, and what it is called in the table of setting times.</summary>
internal static class Glues
{
    /// <summary>How a glue sets.</summary>
    public static Setting SettingOf(this Job job, Glue glue) => job.Tables.Setting(Spoken(glue));

    /// <summary>As a person says it.</summary>
    public static string Spoken(Glue glue) => glue switch
    {
        Glue.Superglue => "superglue",
        Glue.FoamSafeSuperglue => "foam-safe superglue",
        Glue.Pva => "PVA",
        Glue.StyreneCement => "styrene cement",
        _ => "epoxy",
    };

    /// <summary>
    /// What a painter would reach for: styrene cement where all is styrene, white glue where something is porous, superglue for the rest.
    /// </summary>
    public static Glue Suiting(Job job) =>
        !job.IsAnywhere(material => material.Name != "styrene") ? Glue.StyreneCement
        : job.IsAnywhere(material => material.IsPorous) ? Glue.Pva
        : Glue.Superglue;
}
