package evenrise.model.rules;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Project;
import java.util.List;
import org.junit.jupiter.api.Test;

class FreeSlotsTest {
    /**
     * 42 slots, odd ones on the left, of which 1 is reserved and 2 taken: 40 are free, 20 on either side, so there is room
     * for 40 breakers of one pole, ten pairs a side, or six of three poles a side with two slots left over.
     */
    @Test
    void areNeitherReservedNorTaken() {
        Project project = aProject()
                .panels(aPanel("P1").reservedSlots(List.of(1)))
                .loads(aLoad("L1").unswitched())
                .build();
        FreeSlots free = FreeSlots.of(
                project.panels().get(0),
                Layout.of(
                        project,
                        aPlan().assignments(anAssignment("L1").at("P1", 2)).build()));

        assertThat(free.count()).isEqualTo(40);
        assertThat(free.forSwitched()).isEqualTo(40);
        assertThat(free.breakers(1)).isEqualTo(40);
        assertThat(free.breakers(2)).isEqualTo(20);
        assertThat(free.breakers(3)).isEqualTo(12);
    }
}
