package evenrise.model.answer;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/** One thing that is supposed to be otherwise in a project. */
public sealed interface Supposition {
    /** In words, as a question begins: {@code without panel P2}. */
    String words();

    /**
     * What stands in the way of supposing it of this project; empty where nothing does.
     *
     * @param plan of the project
     */
    List<String> obstacles(Project project, Plan plan);

    /** The project if it were so; ask only where nothing stands in the way. */
    Project in(Project project, Plan plan);

    /** A panel is not there, and neither are the boards in it; what was fixed there is free. */
    record Without(String panel) implements Supposition {
        private static final int MOST_NAMED = 12;

        @Override
        public String words() {
            return "without panel " + panel;
        }

        @Override
        public List<String> obstacles(Project project, Plan plan) {
            List<String> obstacles = new ArrayList<>(unknownPanel(project, panel));
            if (project.panels().size() == 1) {
                obstacles.add("the project has one panel only");
            }
            List<String> here = project.loads().stream()
                    .filter(load -> load.panels().equals(List.of(panel)))
                    .map(Load::id)
                    .toList();
            if (!here.isEmpty()) {
                obstacles.add(Phrase.counted(here.size(), "load") + " may sit in no other panel: "
                        + Phrase.quoted(here, MOST_NAMED));
            }
            return obstacles;
        }

        @Override
        public Project in(Project project, Plan plan) {
            Map<String, Board> gone = new HashMap<>();
            project.boards().stream()
                    .filter(board -> board.panel().equals(panel))
                    .forEach(board -> gone.put(board.id(), board));
            return project.with()
                    .panels(project.panels().stream()
                            .filter(each -> !each.id().equals(panel))
                            .toList())
                    .boards(project.boards().stream()
                            .filter(board -> !gone.containsKey(board.id()))
                            .map(board -> left(board, gone))
                            .toList())
                    .loads(project.loads().stream()
                            .map(load -> left(load, gone.keySet()))
                            .toList())
                    .build();
        }

        private Board left(Board board, Map<String, Board> gone) {
            Optional<String> after = board.after();
            while (after.isPresent() && gone.containsKey(after.get())) {
                after = gone.get(after.get()).after();
            }
            return board.with()
                    .reaches(without(board.reaches()))
                    .after(after)
                    .fedBy(board.fedBy().filter(feeds -> !feeds.equals(panel)))
                    .build();
        }

        private Load left(Load load, Set<String> gone) {
            FixedPlace fixed = load.fixed();
            if (fixed.panel().filter(panel::equals).isPresent()) {
                fixed = fixed.withPanel(Optional.empty()).withSlot(OptionalInt.empty());
            }
            if (fixed.board().filter(gone::contains).isPresent()) {
                fixed = fixed.withBoard(Optional.empty())
                        .withOutput(OptionalInt.empty())
                        .withOnSeconds(OptionalDouble.empty());
            }
            return load.with().panels(without(load.panels())).fixed(fixed).build();
        }

        private List<String> without(List<String> panels) {
            return panels.stream().filter(each -> !each.equals(panel)).toList();
        }
    }

    /** Every slot of a panel that the plan leaves free is taken by others. */
    record Full(String panel) implements Supposition {
        @Override
        public String words() {
            return "with panel " + panel + " full";
        }

        @Override
        public List<String> obstacles(Project project, Plan plan) {
            return unknownPanel(project, panel);
        }

        @Override
        public Project in(Project project, Plan plan) {
            Layout layout = Layout.of(project, plan);
            return project.withPanels(project.panels().stream()
                    .map(each -> each.id().equals(panel) ? full(each, layout) : each)
                    .toList());
        }

        private static Panel full(Panel panel, Layout layout) {
            Set<Integer> taken = new HashSet<>();
            layout.in(panel).forEach(each -> taken.addAll(each.slots()));
            Set<Integer> reserved = new TreeSet<>(panel.reservedSlots());
            for (int slot = 1; slot <= panel.slots(); slot++) {
                if (!taken.contains(slot)) {
                    reserved.add(slot);
                }
            }
            return panel.withReservedSlots(List.copyOf(reserved));
        }
    }

    /** One load more; switched where it has a role, and without inrush, which nobody states. */
    record Added(double runningAmps, int poles, Optional<Role> role) implements Supposition {
        @Override
        public String words() {
            return "with one load more of " + runningAmps + " A on " + poles + (poles == 1 ? " pole" : " poles");
        }

        @Override
        public List<String> obstacles(Project project, Plan plan) {
            return List.of();
        }

        @Override
        public Project in(Project project, Plan plan) {
            Set<String> ids = new HashSet<>();
            project.loads().forEach(load -> ids.add(load.id()));
            String id = "one-more";
            for (int number = 2; ids.contains(id); number++) {
                id = "one-more-" + number;
            }
            List<Load> loads = new ArrayList<>(project.loads());
            loads.add(Load.builder()
                    .id(id)
                    .role(role.orElse(Role.AUXILIARY))
                    .poles(poles)
                    .breakerAmps(runningAmps / 0.8)
                    .switched(role.isPresent())
                    .runningAmps(runningAmps)
                    .build());
            return project.withLoads(loads);
        }
    }

    /** The inrush limit of the supply or a panel is another. */
    record Limited(String node, double inrushLimitAmps) implements Supposition {
        private static final String SUPPLY = "supply";

        @Override
        public String words() {
            return "with an inrush limit of " + inrushLimitAmps + " A at " + node;
        }

        @Override
        public List<String> obstacles(Project project, Plan plan) {
            return node.equals(SUPPLY) ? List.of() : unknownPanel(project, node);
        }

        @Override
        public Project in(Project project, Plan plan) {
            OptionalDouble limit = OptionalDouble.of(inrushLimitAmps);
            return node.equals(SUPPLY)
                    ? project.withSupply(project.supply().withInrushLimitAmps(limit))
                    : project.withPanels(project.panels().stream()
                            .map(each -> each.id().equals(node) ? each.withInrushLimitAmps(limit) : each)
                            .toList());
        }
    }

    private static List<String> unknownPanel(Project project, String panel) {
        return project.panels().stream().anyMatch(each -> each.id().equals(panel))
                ? List.of()
                : List.of("the project has no panel '" + panel + "'");
    }
}
