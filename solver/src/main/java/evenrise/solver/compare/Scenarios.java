package evenrise.solver.compare;

import evenrise.model.check.Feasibility;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.PanelType;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Which numbers of panels and boards are worth a plan: each with its cheapest make-up that counting does not rule out. */
public final class Scenarios {
    /** So many make-ups of one number are tried before it is called impossible. */
    private static final int MOST_TRIED = 40;

    /** Numbers above the least that are looked at unasked. */
    private static final int MORE = 2;

    private final Project project;
    private final Catalogue catalogue;

    /** @param project with a catalogue that has panel types, and with board types */
    public Scenarios(Project project) {
        this.project = project;
        this.catalogue = project.catalogue().orElseThrow();
    }

    /** What one number of panels and boards comes to: a scenario for each aim, or why none is possible. */
    public record Cell(int panels, int boards, List<Scenario> scenarios, Optional<String> why) {}

    /**
     * Every pair of numbers in the ranges.
     *
     * @param panels empty for the least number that counting allows and two more; boards alike
     */
    public List<Cell> cells(Optional<CountRange> panels, Optional<CountRange> boards) {
        CountRange panelCounts = panels.orElseGet(() -> from(leastPanels()));
        List<Cell> cells = new ArrayList<>();
        for (int p = panelCounts.least(); p <= panelCounts.most(); p++) {
            int fixed = p;
            CountRange boardCounts = boards.orElseGet(() -> from(leastBoards(fixed)));
            for (int b = boardCounts.least(); b <= boardCounts.most(); b++) {
                cells.add(cell(p, b));
            }
        }
        return cells;
    }

    private static CountRange from(int least) {
        return new CountRange(least, least + MORE);
    }

    private Cell cell(int panels, int boards) {
        String why = "no make-up of " + panels + " panels has the slots and the rating";
        int tried = 0;
        for (List<PanelType> panelWay : panelWays(panels)) {
            List<List<BoardType>> boardWays = boardWays(boards);
            if (boardWays.isEmpty()) {
                return new Cell(
                        panels,
                        boards,
                        List.of(),
                        Optional.of(
                                Composition.isCut(project.boardTypes().size(), boards)
                                        ? "not decided: too many make-ups of " + boards + " boards to try"
                                        : "no make-up of " + boards + " boards holds the shutdown groups"));
            }
            for (List<BoardType> boardWay : boardWays) {
                Project built = built(panelWay, boardWay, Aim.USUAL);
                var findings = Feasibility.impossible(built);
                if (findings.isEmpty()) {
                    return new Cell(panels, boards, scenarios(panelWay, boardWay), Optional.empty());
                }
                why = findings.get(0).pointer() + ": expected "
                        + findings.get(0).expected();
                if (++tried == MOST_TRIED) {
                    return new Cell(
                            panels,
                            boards,
                            List.of(),
                            Optional.of("not decided after " + tried + " make-ups; the last: " + why));
                }
            }
        }
        return new Cell(panels, boards, List.of(), Optional.of(why));
    }

    private List<Scenario> scenarios(List<PanelType> panels, List<BoardType> boards) {
        List<Scenario> scenarios = new ArrayList<>();
        for (Aim aim : Aim.values()) {
            Project built = built(panels, boards, aim);
            String key = String.format(
                    Locale.ROOT,
                    "p%d-b%d-%s",
                    panels.size(),
                    boards.size(),
                    aim.name().toLowerCase(Locale.ROOT).replace('_', '-'));
            scenarios.add(new Scenario(
                    key,
                    panels.size(),
                    boards.size(),
                    aim,
                    built,
                    BillOfMaterials.of(built).total()));
        }
        return scenarios;
    }

    private List<List<PanelType>> panelWays(int number) {
        int poles = project.loads().stream().mapToInt(Load::poles).sum();
        double amps = project.loads().stream()
                        .mapToDouble(load -> load.runningAmps() * load.poles())
                        .sum()
                / project.supply().system().phases().size();
        double fraction = project.supply().continuousFraction();
        return Composition.of(
                catalogue.panelTypes(),
                number,
                PanelType::price,
                way -> way.stream().mapToInt(PanelType::slots).sum() >= poles
                        && way.stream().mapToDouble(PanelType::ratedAmps).sum() * fraction >= amps);
    }

    private List<List<BoardType>> boardWays(int number) {
        long switched = project.loads().stream().filter(Load::switched).count();
        return Composition.of(
                project.boardTypes(),
                number,
                BoardType::price,
                way -> way.stream().mapToInt(BoardType::outputs).sum() >= switched && BoardsFit.fits(project, way));
    }

    private int leastPanels() {
        int number = 1;
        while (panelWays(number).isEmpty() && number < 1000) {
            number++;
        }
        return number;
    }

    private int leastBoards(int panels) {
        int largest =
                project.boardTypes().stream().mapToInt(BoardType::outputs).max().orElse(1);
        long switched = project.loads().stream().filter(Load::switched).count();
        int number = (int) Math.max(1, (switched + largest - 1) / largest);
        while (cell(panels, number).scenarios().isEmpty() && number < 1000 && number <= switched) {
            number++;
        }
        return number;
    }

    private Project built(List<PanelType> panelWay, List<BoardType> boardWay, Aim aim) {
        List<Panel> panels = new ArrayList<>();
        for (int i = 0; i < panelWay.size(); i++) {
            PanelType type = panelWay.get(i);
            panels.add(Panel.builder()
                    .id("P" + (i + 1))
                    .slots(type.slots())
                    .ratedAmps(type.ratedAmps())
                    .neutralFactor(type.neutralFactor())
                    .numbering(type.numbering())
                    .build());
        }
        List<String> all = panels.stream().map(Panel::id).toList();
        List<Board> boards = new ArrayList<>();
        for (int i = 0; i < boardWay.size(); i++) {
            String home = all.get(i % all.size());
            boards.add(Board.builder()
                    .id("B" + (i + 1))
                    .type(boardWay.get(i).id())
                    .panel(home)
                    .reaches(catalogue.boardsReachAll() ? all : List.of(home))
                    .build());
        }
        return project.with()
                .panels(panels)
                .boards(boards)
                .objective(aim.weights(project.objective()))
                .defaults(List.of())
                .build();
    }
}
