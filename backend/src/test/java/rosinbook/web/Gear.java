package rosinbook.web;

/** Small contents to try things on: an invented player's gear. */
final class Gear {
    static final String VIOLIN = "{'title':'Green violin','strings':{'1':{'note':'E5'},'2':{'note':'A4'},"
            + "'3':{'note':'D4'},'4':{'note':'G3'}}}";
    static final String SYNTH = "{'title':'Stage synth','inputs':6,"
            + "'sensitivityScale':{'min':0,'max':100,'step':1,'customaryStart':20},"
            + "'vocabulary':{'straight':{'level':{'type':'range','label':'Level','min':0,'max':100,'unit':'%'}},"
            + "'voice':{'level':{'type':'range','label':'Level','min':0,'max':100,'unit':'%'}},"
            + "'effects':{'delay':{'label':'Echo','parameters':{'time':"
            + "{'type':'time','label':'Time','minMillis':1,'maxMillis':2000}}}}}}";

    final String violin;
    final String synth;

    /** Violin and synth as sheets. */
    Gear(Api api) {
        violin = api.create("instruments", VIOLIN).id();
        synth = api.create("synths", SYNTH).id();
    }

    /** A rig with these sensitivities for strings 1 and 2. */
    String rig(int first, int second) {
        return "{'title':'Green violin into the stage synth','date':'2026-11-10','instrument':{'id':'" + violin
                + "'},'synth':{'id':'" + synth + "'},'assignments':{'1':{'input':1,'sensitivity':" + first
                + "},'2':{'input':2,'sensitivity':" + second + "}}}";
    }

    /** A starting point with this level of the straight sound. */
    String start(int level) {
        return "{'title':'Everyday','synth':'" + synth + "','settings':{'straight':{'on':true,'parameters':{'level':"
                + level + "}},'voices':{'warm':{'name':'Warm strings','order':1,'on':true,'parameters':{'level':60}}},"
                + "'effects':{'echo':{'type':'delay','order':1,'on':true,'parameters':"
                + "{'time':{'note':'dotted eighth'}}}},'slot':'A1','notes':''}}";
    }

    /** A recipe on top of a starting point that changes the warm voice's level. */
    String following(String title, String piece, String start, int warmLevel) {
        return "{'title':'" + title + "','piece':'" + piece + "','synth':'" + synth + "','follows':{'id':'" + start
                + "'},'settings':{'voices':{'warm':{'parameters':{'level':" + warmLevel + "}}}}}";
    }
}
