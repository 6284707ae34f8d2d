package evenrise.solver.app;

import java.util.List;

/**
 * Which loads are pinned or set free: all, or those of any of these.
 *
 * @param panels pins panel and slot of what sits there
 * @param boards pins board and output of what they switch
 * @param groups pins all of it
 * @param loads pins all of it
 * @since 0.1.0
 */
public record PinnedLoads(
        boolean all, List<String> panels, List<String> boards, List<String> groups, List<String> loads) {
    /** Every load, as after a revision was issued. */
    public static final PinnedLoads ALL = new PinnedLoads(true, List.of(), List.of(), List.of(), List.of());

    public PinnedLoads {
        panels = List.copyOf(panels);
        boards = List.copyOf(boards);
        groups = List.copyOf(groups);
        loads = List.copyOf(loads);
    }

    boolean isEmpty() {
        return !all && panels.isEmpty() && boards.isEmpty() && groups.isEmpty() && loads.isEmpty();
    }
}
