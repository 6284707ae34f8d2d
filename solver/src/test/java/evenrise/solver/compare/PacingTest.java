package evenrise.solver.compare;

import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class PacingTest {
    /** Boards of one type; on each so many processing loads, and two auxiliary ones. */
    private static Project seated(List<Double> steps, int... processing) {
        List<LoadBuilder> loads = new ArrayList<>();
        List<Board> boards = new ArrayList<>();
        for (int board = 0; board < processing.length; board++) {
            boards.add(Board.builder().id("B" + board).type("T").panel("P1").build());
            for (int i = 0; i < processing[board] + 2; i++) {
                loads.add(aLoad("L" + board + "-" + i));
            }
        }
        Project flat = aProject().loads(loads).build();
        return flat.with()
                .boardTypes(List.of(aBoardType("T")
                        .outputs(12)
                        .build()
                        .withStartDelaySeconds(List.of(0.0, 1.0, 2.0))
                        .withStepSeconds(steps)))
                .boards(boards)
                .loads(flat.loads().stream()
                        .map(load -> {
                            int board = load.id().charAt(1) - '0';
                            int number = Integer.parseInt(load.id().substring(3));
                            return load.with()
                                    .role(number < processing[board] ? Role.PROCESSING : Role.AUXILIARY)
                                    .fixed(FixedPlace.builder()
                                            .board(Optional.of("B" + board))
                                            .build())
                                    .build();
                        })
                        .toList())
                .build();
    }

    @Test
    void putsTheLastProcessingOfAllBeforeTheFirstOther() {
        int[] processing = {6, 3, 1};
        Project paced = Pacing.of(seated(List.of(0.25, 0.5), processing)).orElseThrow();

        Map<String, BoardType> types =
                paced.boardTypes().stream().collect(Collectors.toMap(BoardType::id, Function.identity()));
        double last = 0;
        double first = Double.POSITIVE_INFINITY;
        for (int board = 0; board < processing.length; board++) {
            BoardType type = types.get(paced.boards().get(board).type());
            assertThat(type.startDelaySeconds()).hasSize(1);
            assertThat(type.stepSeconds()).hasSize(1);
            double delay = type.startDelaySeconds().get(0);
            double step = type.stepSeconds().get(0);
            last = Math.max(last, delay + (processing[board] - 1) * step);
            first = Math.min(first, delay + processing[board] * step);
        }
        assertThat(last).isLessThanOrEqualTo(first);
    }

    @Test
    void givesUpWhereNoSettingsFitTogether() {
        // eight processing loads half a second apart last 3.5 s; two are past by 3 s, whatever their board's delay
        assertThat(Pacing.of(seated(List.of(0.5), 8, 2))).isEmpty();
    }

    @Test
    void leavesBoardsAloneThatHaveProcessingOnly() {
        Project project = seated(List.of(0.25), 2);
        Project processing = project.withLoads(project.loads().stream()
                .map(load -> load.withRole(Role.PROCESSING))
                .toList());

        assertThat(Pacing.of(processing)).isEmpty();
    }
}
