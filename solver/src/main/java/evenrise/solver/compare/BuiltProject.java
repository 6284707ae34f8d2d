package evenrise.solver.compare;

import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** A project with the panels and boards of a make-up in the place of its own, beside those that stay. */
final class BuiltProject {
    private final Variation variation;

    /** Of panels, by place. */
    private final Map<String, List<String>> ids = new LinkedHashMap<>();

    private BuiltProject(Variation variation) {
        this.variation = variation;
    }

    /** @param reachesAll whether a board reaches all panels that those of its system do, or its own alone */
    static Project of(Variation variation, MakeUp makeUp, boolean reachesAll) {
        return new BuiltProject(variation).built(makeUp, reachesAll);
    }

    private Project built(MakeUp makeUp, boolean reachesAll) {
        Project project = variation.project();
        List<Panel> panels = new ArrayList<>(variation.panelsThatStay());
        panels.forEach(panel -> ids.computeIfAbsent(Variation.panelPlace(panel), any -> new ArrayList<>())
                .add(panel.id()));
        Names names = Names.besides(project, variation);
        for (PanelKind kind : makeUp.panels()) {
            Panel panel = panel(kind, names.panel());
            panels.add(panel);
            ids.computeIfAbsent(kind.point().name(), any -> new ArrayList<>()).add(panel.id());
        }
        List<Board> boards = new ArrayList<>();
        variation
                .boardsThatStay()
                .forEach(board -> boards.add(board.with()
                        .panel(home(board))
                        .reaches(allAt(variation.placesOf(board)))
                        .build()));
        Map<Optional<String>, Integer> turns = new LinkedHashMap<>();
        for (BoardKind kind : makeUp.boards()) {
            int turn = turns.merge(kind.system(), 1, Integer::sum) - 1;
            List<String> homes = allAt(variation.homes(kind.system()));
            String home = homes.get(turn % homes.size());
            boards.add(Board.builder()
                    .id(names.board())
                    .type(kind.type().id())
                    .panel(home)
                    .reaches(reachesAll ? allAt(variation.reached(kind.system())) : List.of(home))
                    .system(kind.system())
                    .build());
        }
        List<Load> loads = project.loads().stream()
                .map(load -> load.panels().isEmpty()
                        ? load
                        : load.with().panels(allAt(variation.placesOf(load))).build())
                .toList();
        return project.with()
                .panels(panels)
                .boards(boards)
                .loads(loads)
                .defaults(List.of())
                .build();
    }

    private Panel panel(PanelKind kind, String id) {
        Panel like = kind.point().like();
        return Panel.builder()
                .id(id)
                .slots(kind.type().slots())
                .ratedAmps(kind.type().ratedAmps())
                .neutralFactor(kind.type().neutralFactor())
                .numbering(kind.type().numbering())
                .continuousFraction(like.continuousFraction())
                .feeder(like.feeder()
                        .map(feeder -> feeder.with()
                                .breakerAmps(OptionalDouble.empty())
                                .device(Optional.empty())
                                .build()))
                .fedFrom(like.fedFrom())
                .spare(like.spare())
                .alternateFedFrom(like.alternateFedFrom())
                .transferSeconds(like.transferSeconds())
                .neutralSwitched(like.neutralSwitched())
                .build();
    }

    private String home(Board board) {
        Panel panel = variation.panelOf(board.panel());
        return ids.get(variation.placeOf(panel)).get(0);
    }

    /** In the order of panels. */
    private List<String> allAt(Set<String> places) {
        return ids.entrySet().stream()
                .filter(each -> places.contains(each.getKey()))
                .flatMap(each -> each.getValue().stream())
                .toList();
    }
}
