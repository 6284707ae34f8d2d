package evenrise.model.check;

import evenrise.model.project.Behaviour;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.SlotNumbering;
import evenrise.model.project.Supply;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Relaxes a project with errors so far that whatever is impossible of it stays so however the errors are cured: a load
 * with an error is left out; a panel, board, type or supply with one is as generous as can be.
 */
final class BenefitOfDoubt {
    private static final Pattern PART = Pattern.compile("/([a-z_]+)/(\\d{1,8})(/.*)?");
    private static final Set<String> LEAVE_NOTHING_SURE =
            Set.of("", "/panels", "/board_types", "/boards", "/shutdown_groups", "/loads", "/supply", "/supply/system");
    /** Most slots of a panel and outputs of a board that the format allows. */
    static final int MOST = 1000;

    private final Project project;
    private final Set<String> errors;
    private final Set<String> wrongParts = new HashSet<>();

    private BenefitOfDoubt(Project project, Set<String> errors) {
        this.project = project;
        this.errors = errors;
        for (String error : errors) {
            Matcher part = PART.matcher(error);
            if (part.matches()) {
                wrongParts.add("/" + part.group(1) + "/" + part.group(2));
            }
        }
    }

    /** Empty where the errors leave nothing to be sure of. Panels, boards and groups keep their positions. */
    static Optional<Project> of(Project project, Set<String> errors) {
        if (errors.isEmpty()) {
            return Optional.of(project);
        }
        return errors.stream().anyMatch(LEAVE_NOTHING_SURE::contains)
                ? Optional.empty()
                : new BenefitOfDoubt(project, errors).relaxed();
    }

    /** Whether it is sure which loads belong to which group. */
    static boolean leavesGroupsSure(Set<String> errors) {
        return errors.stream().noneMatch(at -> at.startsWith("/loads") || at.startsWith("/shutdown_groups"));
    }

    /** The finding with the load's position in the project that has all loads. */
    static Objection asIn(Project all, Project sound, Objection finding) {
        Matcher part = PART.matcher(finding.pointer());
        if (all == sound || !part.matches() || !part.group(1).equals("loads")) {
            return finding;
        }
        String id = sound.loads().get(Integer.parseInt(part.group(2))).id();
        int index = 0;
        while (!all.loads().get(index).id().equals(id)) {
            index++;
        }
        String pointer = "/loads/" + index + (part.group(3) == null ? "" : part.group(3));
        return new Objection(finding.severity(), pointer, finding.value(), finding.expected(), finding.cure());
    }

    private Optional<Project> relaxed() {
        List<Panel> panels = relaxed("/panels/", project.panels(), Panel::id, BenefitOfDoubt::generous);
        List<String> anyPanel = panels.stream().map(Panel::id).distinct().toList();
        BoardType any = BoardType.builder()
                .id("\0any")
                .outputs(MOST)
                .startDelaySeconds(List.of(0.0))
                .stepSeconds(List.of(0.0))
                .price(0)
                .build();
        List<BoardType> types = new ArrayList<>(relaxed(
                "/board_types/",
                project.boardTypes(),
                BoardType::id,
                (id, it) -> BoardType.builder()
                        .id(id)
                        .outputs(MOST)
                        .startDelaySeconds(any.startDelaySeconds())
                        .stepSeconds(any.stepSeconds())
                        .price(0)
                        .build()));
        types.add(any);
        List<Board> boards = relaxed(
                "/boards/",
                project.boards(),
                Board::id,
                (id, it) -> Board.builder()
                        .id(id)
                        .type(any.id())
                        .panel(it.panel())
                        .reaches(anyPanel)
                        .build());
        List<Load> loads = soundLoads();
        return loads.isEmpty()
                ? Optional.empty()
                : Optional.of(project.with()
                        .supply(supply())
                        .maxDurationSeconds(
                                errors.contains("/max_duration_s")
                                        ? OptionalDouble.empty()
                                        : project.maxDurationSeconds())
                        .panels(panels)
                        .boardTypes(types)
                        .boards(boards)
                        .loads(loads)
                        .behaviour(behaviour())
                        .build());
    }

    /** One with an error asks nothing. */
    private Optional<Behaviour> behaviour() {
        boolean isInDoubt = errors.stream().anyMatch(it -> it.startsWith("/behaviour"));
        return isInDoubt ? Optional.empty() : project.behaviour();
    }

    /** References to a load that is left out stay, and refer to nothing. */
    private List<Load> soundLoads() {
        List<Load> sound = new ArrayList<>();
        for (int i = 0; i < project.loads().size(); i++) {
            if (!wrongParts.contains("/loads/" + i)) {
                sound.add(project.loads().get(i));
            }
        }
        return sound;
    }

    private Supply supply() {
        Supply it = project.supply();
        PhaseSystem system = it.system();
        return errors.stream().noneMatch(at -> at.startsWith("/supply/"))
                ? it
                : Supply.builder()
                        .system(system)
                        .lineToNeutralVolts(it.lineToNeutralVolts())
                        .frequencyHertz(it.frequencyHertz())
                        .ratedAmps(100_000)
                        .continuousFraction(1)
                        .neutralFactor(4)
                        .build();
    }

    private static Panel generous(String id, Panel wrong) {
        return Panel.builder()
                .id(id)
                .slots(MOST)
                .ratedAmps(100_000)
                .neutralFactor(4)
                .numbering(SlotNumbering.SEQUENTIAL)
                .build();
    }

    /** Each part itself where nothing is wrong with it and its id is its own, else what stands in for it. */
    private <T> List<T> relaxed(String list, List<T> all, Function<T, String> id, BiFunction<String, T, T> standIn) {
        Set<String> inDoubt = new HashSet<>();
        Set<String> ids = new HashSet<>();
        for (int i = 0; i < all.size(); i++) {
            String mine = id.apply(all.get(i));
            if (!ids.add(mine) || wrongParts.contains(list + i)) {
                inDoubt.add(mine);
            }
        }
        return all.stream()
                .map(it -> inDoubt.contains(id.apply(it)) ? standIn.apply(id.apply(it), it) : it)
                .toList();
    }
}
