namespace Pipeline.Scheduling;

/// <summary>A way to make a schedule from a list of tasks that keeps the order of <see cref="TaskOrder"/>.</summary>
internal interface IListScheme
{
    /// <summary>Elementary steps done so far, about as dear in every scheme.</summary>
    long Work { get; }

    /// <summary>Fills in early starts in the order of the list; returns the finish, or null if the list led nowhere.</summary>
    long? Forward(int[] list, long[] starts);

    /// <summary>The same from the other end: the starts count from the end of everything to a task's finish.</summary>
    long? Backward(int[] list, long[] starts);
}
