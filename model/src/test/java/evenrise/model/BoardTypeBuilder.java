package evenrise.model;

import evenrise.model.project.BoardType;
import java.util.Arrays;
import java.util.List;

public final class BoardTypeBuilder {
    /** Id of the type that boards have unless told otherwise. */
    public static final String EIGHT = "eight";

    private final String id;
    private int outputs = 8;
    private List<Double> startDelaySeconds = List.of(0.0, 0.5, 1.0, 2.0);
    private List<Double> stepSeconds = List.of(0.25, 0.5, 1.0);
    private double price = 0;

    BoardTypeBuilder(String id) {
        this.id = id;
    }

    public BoardTypeBuilder outputs(int it) {
        outputs = it;
        return this;
    }

    public BoardTypeBuilder startDelaySeconds(double... it) {
        startDelaySeconds = Arrays.stream(it).boxed().toList();
        return this;
    }

    public BoardTypeBuilder stepSeconds(double... it) {
        stepSeconds = Arrays.stream(it).boxed().toList();
        return this;
    }

    public BoardTypeBuilder price(double it) {
        price = it;
        return this;
    }

    public BoardType build() {
        return new BoardType(id, outputs, startDelaySeconds, stepSeconds, price);
    }
}
