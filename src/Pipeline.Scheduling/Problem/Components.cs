namespace Pipeline.Scheduling;

/// <summary>
/// Groups of activities that waits tie together in both directions (a greatest wait is an arc back), in an order in which
/// every group depends only on groups before it. Most groups are one activity.
/// </summary>
internal sealed class Components
{
    private readonly Net net;
    private readonly int[] index;
    private readonly int[] low;
    private readonly bool[] onStack;
    private readonly Stack<int> stack = new();
    private readonly List<int[]> groups = [];
    private int counter;

    public Components(Net net)
    {
        this.net = net;
        Of = new int[net.Count];
        index = new int[net.Count];
        low = new int[net.Count];
        onStack = new bool[net.Count];
        for (var a = 0; a < net.Count; a++)
        {
            if (index[a] == 0)
                Visit(a);
        }

        // Tarjan's method finds the last groups first.
        groups.Reverse();
        Groups = [.. groups];
        for (var g = 0; g < Groups.Length; g++)
        {
            Array.Sort(Groups[g]);
            foreach (var a in Groups[g])
                Of[a] = g;
        }

        IsTied = [.. Groups.Select(g => g.Length > 1 || net.Out[g[0]].Any(arc => arc.To == g[0]))];
    }

    public int[][] Groups { get; }

    public int[] Of { get; }

    /// <summary>Whether a group has a ring of waits in it.</summary>
    public bool[] IsTied { get; }

    // Without recursion: a project may be one long chain.
    private void Visit(int root)
    {
        var path = new Stack<(int Activity, int Arc)>();
        Enter(root);
        path.Push((root, 0));
        while (path.Count > 0)
        {
            var (a, next) = path.Pop();
            if (next < net.Out[a].Length)
            {
                path.Push((a, next + 1));
                var to = net.Out[a][next].To;
                if (index[to] == 0)
                {
                    Enter(to);
                    path.Push((to, 0));
                }
                else if (onStack[to])
                {
                    low[a] = Math.Min(low[a], index[to]);
                }

                continue;
            }

            if (low[a] == index[a])
                Close(a);
            if (path.Count > 0)
                low[path.Peek().Activity] = Math.Min(low[path.Peek().Activity], low[a]);
        }
    }

    private void Enter(int a)
    {
        index[a] = low[a] = ++counter;
        stack.Push(a);
        onStack[a] = true;
    }

    private void Close(int root)
    {
        var group = new List<int>();
        int a;
        do
        {
            a = stack.Pop();
            onStack[a] = false;
            group.Add(a);
        }
        while (a != root);
        groups.Add([.. group]);
    }
}
