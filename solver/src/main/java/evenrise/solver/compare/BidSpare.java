package evenrise.solver.compare;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Spare;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Room that panels and boards of a bid leave, so that the next wish does not need the next panel. Panels and boards that stay
 * as they are, and kinds of those boards, are not asked for more than the project asks.
 *
 * @param slots free in each panel
 * @param outputs free on each board in use
 * @param runningPercent of the allowed running current of each panel
 * @param isAsked whether somebody asked for it; else it stands only where the project says nothing of spare
 */
public record BidSpare(int slots, int outputs, double runningPercent, boolean isAsked) {
    /** Common practice, no source. */
    public static final BidSpare USUAL = new BidSpare(2, 1, 10, false);

    /** The project with this room, and what more it asks for itself. */
    public Project on(Project project) {
        if (!counts(project)) {
            return project;
        }
        Stays stays = new Stays(project);
        Set<String> kinds =
                project.boards().stream().filter(stays::has).map(Board::type).collect(Collectors.toSet());
        List<Panel> panels = project.panels().stream()
                .map(panel -> stays.has(panel)
                        ? panel.withSpare(project.spareIn(panel)
                                .or(() -> Optional.of(Spare.builder().build())))
                        : panel.withSpare(panel.spare().map(this::more)))
                .toList();
        List<BoardType> types = project.boardTypes().stream()
                .map(type -> kinds.contains(type.id())
                        ? type
                        : type.withSpareOutputs(Math.max(type.spareOutputs(), outputs)))
                .toList();
        return project.with()
                .panels(panels)
                .boardTypes(types)
                .spare(Optional.of(more(project.spare().orElse(Spare.builder().build()))))
                .build();
    }

    /** What it comes to in a project, for people. */
    public String sentence(Project project) {
        if (!counts(project)) {
            return "Spare: as the project asks.";
        }
        String room = Phrase.counted(slots, "slot") + " a panel, " + Phrase.counted(outputs, "output") + " a board, "
                + String.format(Locale.ROOT, "%s", decimal(runningPercent)) + " % of each panel's running current";
        return isAsked
                ? "Spare: at least " + room + ", as asked, and what the project asks."
                : "Spare: " + room + ", assumed, for the project asks for none (common practice, no source).";
    }

    private static String decimal(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }

    private boolean counts(Project project) {
        boolean isStated = project.spare().isPresent()
                || project.panels().stream().anyMatch(panel -> panel.spare().isPresent())
                || project.boardTypes().stream().anyMatch(type -> type.spareOutputs() > 0);
        return isAsked || !isStated;
    }

    private Spare more(Spare own) {
        return own.with()
                .slots(Math.max(own.slots(), slots))
                .runningPercent(Math.max(own.runningPercent(), runningPercent))
                .build();
    }
}
