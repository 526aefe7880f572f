package rosinbook.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.module.paramnames.ParameterNamesModule;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ContentJsonTest {
    private static final ObjectMapper JSON = JsonMapper.builder()
            .addModule(new ParameterNamesModule())
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{'carries':'string','string':3}",
                "{'carries':'mixed'}",
                "{'carries':'supply','volts':7.0}",
                "{'carries':'supply','volts':-7.0,'maxMilliamps':20.0,'tolerancePercent':5.0}",
                "{'carries':'ground'}",
                "{'carries':'control','line':'source'}",
                "{'carries':'switch','line':'source'}",
                "{'carries':'unused'}",
                "{'carries':'unknown'}"
            })
    void a_pin_role_is_written_as_it_was_read(String json) throws Exception {
        assertSame(json, PinRole.class);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{'via':'straight'}",
                "{'via':'preamp','gainDecibels':6.0,'supplyMilliamps':0.5}",
                "{'via':'preamp','gainDecibels':6.0,'supplyMilliamps':0.5,'inputOhms':1.0E7,'supplyPin':'7',"
                        + "'negativeSupplyPin':'8'}",
                "{'via':'resistor','ohms':1000.0}",
                "{'via':'divider','upperOhms':5600.0,'lowerOhms':1000.0,'supplyPin':'7','targetVolts':1.04}",
                "{'via':'switch','positions':{'both':{'via':'open'},'synth':{'via':'tied','ohms':0.0}}}",
                "{'via':'tied','ohms':0.0}",
                "{'via':'open'}"
            })
    void what_stands_in_the_way_is_written_as_it_was_read(String json) throws Exception {
        assertSame(json, Via.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"{'read':'ohms','ohms':4700.0}", "{'read':'open'}", "{'read':'volts','volts':-7.0}"})
    void a_meter_reading_is_written_as_it_was_read(String json) throws Exception {
        assertSame(json, MeterReading.class);
    }

    @Test
    void every_kind_of_role_way_and_reading_is_known_to_json() {
        for (Class<?> sealed : List.of(PinRole.class, Via.class, MeterReading.class)) {
            var named = sealed.getAnnotation(com.fasterxml.jackson.annotation.JsonSubTypes.class);
            assertEquals(sealed.getPermittedSubclasses().length, named.value().length, sealed.getName());
        }
    }

    @Test
    void connector_control_line_adapter_and_pickup_are_written_as_they_were_read() throws Exception {
        assertSame(
                "{'shape':'round 8-pin','name':'','pins':{'2':{'role':{'carries':'ground'},'x':-0.5,'y':1.0,'note':''},"
                        + "'10':{'role':{'carries':'unknown'},'note':'green wire'}},'drawnFrom':'mating'}",
                Connector.class);
        assertSame(
                "{'label':'Source','minVolts':0.0,'maxVolts':5.0,'loadOhms':100000.0,"
                        + "'bands':[{'fromVolts':0.8,'toVolts':1.4,'meaning':'both sounds'}]}",
                ControlLine.class);
        assertSame(
                "{'routes':{'string-1':{'instrumentPin':'1','synthPin':'3','via':{'via':'straight'}},"
                        + "'tie-5':{'synthPin':'5','via':{'via':'tied','ohms':0.0}}},"
                        + "'parts':{'series':'E24','tolerancePercent':1.0,'ratingMilliwatts':250.0}}",
                Adapter.class);
        assertSame("{'sourcePicofarads':500.0,'cableMetres':3.0,'cablePicofaradsPerMetre':100.0}", Pickup.class);
    }

    @Test
    void what_is_left_out_gets_its_natural_default() throws Exception {
        assertEquals(new Adapter(null, Parts.USUAL), read("{}", Adapter.class));
        assertEquals(
                Connector.of("", "", java.util.Map.of("1", Pin.of(new PinRole.Unknown()))),
                read("{'pins':{'1':{}}}", Connector.class));
        assertEquals(
                new Route("1", "2", new Via.Straight()), read("{'instrumentPin':'1','synthPin':'2'}", Route.class));
    }

    @Test
    void pins_stand_in_counted_order_with_words_last() throws Exception {
        var connector = read("{'pins':{'shell':{},'10':{},'2':{},'1':{}}}", Connector.class);
        assertEquals(
                List.of("1", "2", "10", "shell"), List.copyOf(connector.pins().keySet()));
    }

    /** Each row: a type, JSON that must be refused, and how the message starts. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            textBlock =
                    """
            Via       | {'via':'divider','upperOhms':-4.7,'lowerOhms':1} | upperOhms is -4.7; give ohms above 0
            Via       | {'via':'divider','upperOhms':1}                  | lowerOhms is 0; give ohms above 0
            Via       | {'via':'divider','upperOhms':'NaN','lowerOhms':1}| upperOhms is NaN
            Via       | {'via':'resistor','ohms':1e400}                  | ohms is Infinity
            Via       | {'via':'preamp','gainDecibels':90}               | gainDecibels is 90; give decibels from -60 to 60
            Via       | {'via':'switch','positions':{'a':{'via':'open'}}}| positions has 1 entries; give 2 to 6
            Via       | {'via':'switch','positions':{'a':{'via':'open'},'b':{'via':'switch','positions':{'c':{'via':'open'},'d':{'via':'open'}}}}} | positions has a switch behind
            Via       | {'via':'tied','ohms':-1}                         | ohms is -1
            PinRole   | {'carries':'string'}                             | string is 0; give a number from 1 to 12
            PinRole   | {'carries':'supply','volts':0}                   | volts is 0
            PinRole   | {'carries':'supply','volts':61}                  | volts is 61; give volts from -60 to 60
            PinRole   | {'carries':'supply','volts':7,'maxMilliamps':0}  | maxMilliamps is 0
            PinRole   | {'carries':'control','line':' '}                 | line has 0 characters; give 1 to 40
            Pin       | {'x':0.5}                                        | y is missing; give both
            Pin       | {'x':0.5,'y':1.01}                               | y is 1.01; give a place from -1 to 1
            Connector | {}                                               | pins has 0 entries; give 1 to 40
            Connector | {'pins':{'1234567890123':{}}}                    | pins has 13 characters; give 1 to 12
            Connector | {'pins':{'1':null}}                              | pins is missing
            ControlLine | {'label':'x','minVolts':5,'maxVolts':0}        | maxVolts is 0; give volts above minVolts
            ControlLine | {'label':'x','maxVolts':5,'bands':[{'fromVolts':0,'toVolts':2,'meaning':'a'},{'fromVolts':1,'toVolts':3,'meaning':'b'}]} | bands has 'a' overlapping 'b'
            ControlLine | {'label':'x','maxVolts':5,'bands':[{'fromVolts':4,'toVolts':6,'meaning':'a'}]} | bands has 'a' outside 0 to 5 V
            Route     | {'synthPin':'1'}                                 | instrumentPin is missing
            Route     | {'instrumentPin':'1'}                            | synthPin is missing
            Route     | {'instrumentPin':'1','synthPin':'1','via':{'via':'tied'}} | instrumentPin is given beside synthPin
            Route     | {'synthPin':'1','via':{'via':'divider','upperOhms':1,'lowerOhms':1}} | supplyPin is missing
            Route     | {'instrumentPin':'2','synthPin':'1','via':{'via':'divider','upperOhms':1,'lowerOhms':1,'supplyPin':'7'}} | supplyPin is given beside
            Parts     | {'tolerancePercent':0}                           | tolerancePercent is 0
            Pickup    | {'cableMetres':3}                                | sourcePicofarads is 0
            """)
    void wrong_values_are_refused_by_a_message_that_starts_with_the_field(String type, String json, String start)
            throws Exception {
        Class<?> target = Class.forName("rosinbook.circuit." + type);
        var problem = assertThrows(JsonProcessingException.class, () -> read(json, target));
        Throwable cause = problem.getCause();
        assertTrue(cause instanceof IllegalArgumentException, String.valueOf(problem));
        assertTrue(cause.getMessage().startsWith(start), cause.getMessage());
    }

    private static void assertSame(String quoted, Class<?> type) throws Exception {
        String json = quoted.replace('\'', '"');
        Object content = JSON.readValue(json, type);
        assertEquals(json, JSON.writeValueAsString(content));
        assertEquals(content, JSON.readValue(json, type));
    }

    private static <T> T read(String quoted, Class<T> type) throws JsonProcessingException {
        return JSON.readValue(quoted.replace('\'', '"'), type);
    }
}
