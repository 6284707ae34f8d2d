package evenrise.model;

import evenrise.model.project.BoardType;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;

public final class BoardTypeBuilder {
    /** Id of the type that boards have unless told otherwise. */
    public static final String EIGHT = "eight";

    private final evenrise.model.project.BoardTypeBuilder made;

    BoardTypeBuilder(String id) {
        made = BoardType.builder()
                .id(id)
                .outputs(8)
                .startDelaySeconds(List.of(0.0, 0.5, 1.0, 2.0))
                .stepSeconds(List.of(0.25, 0.5, 1.0))
                .price(0);
    }

    public BoardTypeBuilder outputs(int it) {
        made.outputs(it);
        return this;
    }

    public BoardTypeBuilder startDelaySeconds(double... it) {
        made.startDelaySeconds(Arrays.stream(it).boxed().toList());
        return this;
    }

    public BoardTypeBuilder stepSeconds(double... it) {
        made.stepSeconds(Arrays.stream(it).boxed().toList());
        return this;
    }

    public BoardTypeBuilder price(double it) {
        made.price(it);
        return this;
    }

    /** Sets what has no method of its own here. */
    public BoardTypeBuilder with(Consumer<evenrise.model.project.BoardTypeBuilder> more) {
        more.accept(made);
        return this;
    }

    public BoardType build() {
        return made.build();
    }
}
