using Pipeline.Surfaces;

namespace Pipeline.Planning;

/// <summary>The activities of a posed batch by what an earlier plan calls them: model, step and coat, from 1.</summary>
internal static class NamedActivities
{
    /// <param name="walked">The batch.</param>
    /// <param name="routes">Which activities the steps of its routes are.</param>
    public static Dictionary<(string Model, string Step, int Coat), int> Of(Walked walked, IReadOnlyList<PosedRoute> routes)
    {
        var activities = new Dictionary<(string Model, string Step, int Coat), int>();
        for (var r = 0; r < walked.Routes.Count; r++)
        {
            var route = walked.Routes[r].Route;
            var names = StepNames.Of(route);
            for (var s = 0; s < names.Count; s++)
            {
                foreach (var activity in routes[r].Of(s))
                    activities.TryAdd((route.Model.Name, names[s], activity - routes[r].First(s) + 1), activity);
            }
        }

        return activities;
    }
}
