package rosinbook.cli;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** Level reports as JSON, figures to six decimals: enough for a constant offset, and no false precision beyond. */
final class LevelsJson {
    static final ObjectMapper MAPPER = new ObjectMapper()
            .registerModule(new SimpleModule()
                    .addSerializer(Double.class, new SixDecimals())
                    .addSerializer(double.class, new SixDecimals()));

    private LevelsJson() {}

    private static final class SixDecimals extends JsonSerializer<Double> {
        @Override
        public void serialize(Double figure, JsonGenerator json, SerializerProvider provider) throws IOException {
            json.writeNumber(BigDecimal.valueOf(figure)
                    .setScale(6, RoundingMode.HALF_EVEN)
                    .doubleValue());
        }
    }
}
